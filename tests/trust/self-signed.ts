import { generateKeyPairSync, randomBytes, sign } from "node:crypto";

/** A length as DER writes it (X.690, 8.1.3). */
function lengthOf(size: number): Buffer {
  if (size < 128) return Buffer.from([size]);
  const bytes = size < 256 ? [size] : [size >> 8, size & 255];
  return Buffer.from([128 + bytes.length, ...bytes]);
}

function node(tag: number, ...inside: readonly Buffer[]): Buffer {
  const body = Buffer.concat(inside);
  return Buffer.concat([Buffer.from([tag]), lengthOf(body.length), body]);
}

const sequence = (...inside: readonly Buffer[]) => node(0x30, ...inside);
const object = (hex: string) => node(0x06, Buffer.from(hex, "hex"));
const utcTime = (date: Date) => node(0x17, Buffer.from(`${date.toISOString().replaceAll(/[-:T]/g, "").slice(2, 14)}Z`));

/** id-at-commonName, ecdsa-with-SHA256, id-ce-subjectAltName (RFC 5280, RFC 5758). */
const [COMMON_NAME, ECDSA, ALT_NAME] = ["550403", "2a8648ce3d040302", "551d11"] as const;

/** A key and a certificate signed by itself for one name, for two days, as the server’s half of TLS wants them (RFC 5280). */
export function selfSigned(name: string): { readonly key: string; readonly cert: string } {
  const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "prime256v1" });
  const called = sequence(node(0x31, sequence(object(COMMON_NAME), node(0x0c, Buffer.from(name)))));
  const day = 24 * 3600 * 1000;
  const alternatives = sequence(object(ALT_NAME), node(0x04, sequence(node(0x82, Buffer.from(name)))));
  const facts = sequence(
    node(0xa0, node(0x02, Buffer.from([2]))),
    node(0x02, Buffer.concat([Buffer.from([1]), randomBytes(8)])),
    sequence(object(ECDSA)),
    called,
    sequence(utcTime(new Date(Date.now() - day)), utcTime(new Date(Date.now() + day))),
    called,
    publicKey.export({ type: "spki", format: "der" }),
    node(0xa3, sequence(alternatives)),
  );
  const signature = sign("sha256", facts, privateKey);
  const whole = sequence(facts, sequence(object(ECDSA)), node(0x03, Buffer.from([0]), signature));
  const lines = whole.toString("base64").replaceAll(/(.{64})/g, "$1\n");
  return {
    key: privateKey.export({ type: "pkcs8", format: "pem" }).toString(),
    cert: `-----BEGIN CERTIFICATE-----\n${lines}\n-----END CERTIFICATE-----\n`,
  };
}
