import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { lacking, normaliseComponents, readComponents, readLock } from "@/app/_commands/component-list";
import { readProject } from "../structure/project-files";

// H1 and H2: what is installed is what was written down, and each package has its reason.

const ROOT = path.resolve(import.meta.dirname, "../..");
const read = (name: string) => readFileSync(path.join(ROOT, name), "utf8");

interface Lock {
  readonly packages: Readonly<
    Record<string, { version: string; resolved?: string; integrity?: string; hasInstallScript?: boolean }>
  >;
}
interface Manifest {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly allowScripts: Readonly<Record<string, boolean>>;
}

const manifest = JSON.parse(read("package.json")) as Manifest;
const direct = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
const lock = (JSON.parse(read("package-lock.json")) as Lock).packages;
const installed = Object.entries(lock).filter(([place]) => place !== "");
const nameOf = (place: string) => place.slice(place.lastIndexOf("node_modules/") + "node_modules/".length);

/** The patterns of the table in DEVELOPERS.md that gives each package its reason: `name` or `@scope/*`. */
function reasons(text: string): readonly string[] {
  const table = text.slice(text.indexOf("## Dependencies, and why")).split("\n");
  const rows = table.filter((line) => line.startsWith("| ")).slice(1);
  return rows.flatMap((line) => {
    const [, packages = "", why = ""] = line.split("|").map((cell) => cell.trim());
    return why.length < 5 ? [] : packages.split(", ");
  });
}

function without(list: readonly string[], names: readonly string[]): string[] {
  const fits = (name: string, one: string) => (one.endsWith("*") ? name.startsWith(one.slice(0, -1)) : name === one);
  return names.filter((name) => !list.some((one) => fits(name, one)));
}

describe("H1: what is installed", () => {
  it("has one exact version in package.json, the same in the lock", () => {
    expect(direct.length).toBeGreaterThan(30);
    for (const [name, version] of direct) {
      expect(`${name} ${version}`).toMatch(/^\S+ \d+\.\d+\.\d+$/);
      expect(`${name} ${lock[`node_modules/${name}`]?.version}`).toBe(`${name} ${version}`);
    }
  });

  it("bears an SHA-512 in every entry of the lock, and comes from whichever registry npm is told of", () => {
    expect(installed.length).toBeGreaterThan(500);
    expect(installed.filter(([, { integrity }]) => !/^sha512-[A-Za-z0-9+/]{86}==$/.test(integrity ?? ""))).toEqual([]);
    expect(installed.filter(([, { resolved }]) => resolved !== undefined)).toEqual([]);
    expect(read(".npmrc")).not.toMatch(/^(@\S+:)?registry\s*=|_auth|token/im);
    const host = /registry[.](npmjs|yarnpkg|npmmirror)/;
    const texts = [
      ...readProject(),
      ...["package.json", "package-lock.json", "sbom.cdx.json", ".npmrc"].map((name) => ({ name, text: read(name) })),
    ];
    expect(texts.filter(({ text }) => host.test(text)).map(({ name }) => name)).toEqual([]);
  });

  it("runs install scripts of the listed packages alone, and npm stops at any other", () => {
    const scripted = new Set(installed.filter(([, one]) => one.hasInstallScript).map(([place]) => nameOf(place)));
    const allowed = Object.entries(manifest.allowScripts)
      .filter(([, yes]) => yes)
      .map(([name]) => name);
    expect([...scripted].sort()).toEqual(allowed.sort());
    expect(read(".npmrc")).toMatch(/^strict-allow-scripts=true$/m);
    expect(read(".npmrc")).toMatch(/^save-exact=true$/m);
  });
});

describe("H2: the list of packages and their reasons", () => {
  const components = readComponents(read("sbom.cdx.json"));

  it("sbom.cdx.json has each package of the lock with its sum, and no other; after a change: npm run sbom", () => {
    const wanted = readLock(read("package-lock.json"));
    expect(wanted.length).toBeGreaterThan(500);
    expect(lacking(wanted, components)).toEqual([]);
    expect(lacking(components, wanted)).toEqual([]);
  });

  it("a new package, another version and another sum are each missed in the list", () => {
    const own = JSON.parse(read("package-lock.json")) as Lock;
    const zod = lock["node_modules/zod"];
    const changed = (packages: object) => JSON.stringify({ ...own, packages: { ...own.packages, ...packages } });
    const missed = (packages: object) => lacking(readLock(changed(packages)), components);
    expect(missed({ "node_modules/a/node_modules/@b/c": { version: "1.0.0", integrity: zod?.integrity } })).toEqual([
      "@b/c@1.0.0",
    ]);
    expect(missed({ "node_modules/zod": { ...zod, version: "9.9.9" } })).toEqual(["zod@9.9.9"]);
    expect(missed({ "node_modules/zod": { ...zod, integrity: `sha512-${"A".repeat(86)}==` } })).toEqual([
      `zod@${zod?.version}`,
    ]);
  });

  it("says nothing of the run, the folder or the tool, and is its own normal form", () => {
    const text = read("sbom.cdx.json");
    expect(normaliseComponents(text)).toBe(text);
    const { metadata, ...rest } = JSON.parse(text);
    expect([metadata.component.name, metadata.timestamp, metadata.tools, rest.serialNumber]).toEqual([
      "proofband",
      undefined,
      undefined,
      undefined,
    ]);
    const ran = {
      ...rest,
      serialNumber: "urn:uuid:1",
      metadata: {
        ...metadata,
        timestamp: "now",
        tools: [{}],
        component: { ...metadata.component, name: "some-folder" },
      },
      components: [...rest.components].reverse(),
      dependencies: [...rest.dependencies].reverse(),
    };
    expect(normaliseComponents(JSON.stringify(ran))).toBe(text);
  });

  it("DEVELOPERS.md has a reason for each direct package, and for none that is gone", () => {
    const names = direct.map(([name]) => name);
    const list = reasons(read("DEVELOPERS.md"));
    expect(without(list, names)).toEqual([]);
    expect(without(list, [...names, "left-pad-of-tomorrow"])).toEqual(["left-pad-of-tomorrow"]);
    expect(list.filter((one) => without([one], names).length === names.length)).toEqual([]);
  });
});
