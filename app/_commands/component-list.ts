/** A package of the lock or of the component list: its name, version and the SHA-512 of its archive, in hexadecimal. */
export interface Component {
  readonly name: string;
  readonly version: string;
  readonly sha512: string;
}

interface Lock {
  readonly packages: Readonly<Record<string, { readonly version: string; readonly integrity?: string }>>;
}

/** The parts of a CycloneDX list that are read here; the others are kept as they are. */
interface ComponentList {
  readonly serialNumber?: string;
  readonly metadata: {
    readonly timestamp?: string;
    readonly tools?: unknown;
    readonly component: { readonly name: string; readonly purl: string };
  };
  readonly components: readonly {
    readonly "bom-ref": string;
    readonly name: string;
    readonly version: string;
    readonly hashes: readonly { readonly alg: string; readonly content: string }[];
  }[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn: readonly string[] }[];
}

/** What the lock installs, each name and version once. An entry without an integrity has an empty sum. */
export function readLock(text: string): Component[] {
  const packages = Object.entries((JSON.parse(text) as Lock).packages).filter(([place]) => place !== "");
  return once(
    packages.map(([place, { version, integrity = "" }]) => ({
      name: place.slice(place.lastIndexOf("node_modules/") + "node_modules/".length),
      version,
      sha512: Buffer.from(/^sha512-(\S+)$/.exec(integrity)?.[1] ?? "", "base64").toString("hex"),
    })),
  );
}

/** What a component list (CycloneDX, as npm writes it) names. */
export function readComponents(text: string): Component[] {
  return once(
    (JSON.parse(text) as ComponentList).components.map(({ name, version, hashes }) => ({
      name,
      version,
      sha512: hashes.find(({ alg }) => alg === "SHA-512")?.content ?? "",
    })),
  );
}

/** Each component of one list that the other lacks, as "name@version". */
export function lacking(wanted: readonly Component[], list: readonly Component[]): string[] {
  const there = new Set(list.map(told));
  return wanted.filter((one) => !there.has(told(one))).map(({ name, version }) => `${name}@${version}`);
}

/**
 * npm's list without what differs from one run, folder or version of npm to the next (serial number, time, tool, name of the
 * folder), in order, a component a line: two lists of one lock are the same text, and a new package is a line of a diff.
 */
export function normaliseComponents(text: string): string {
  const { serialNumber: _serial, metadata, components, dependencies, ...rest } = JSON.parse(text) as ComponentList;
  const { timestamp: _time, tools: _tools, component, ...kept } = metadata;
  const name = /^pkg:npm\/(.+)@/.exec(component.purl)?.[1] ?? component.name;
  const list = {
    ...rest,
    metadata: { ...kept, component: { ...component, name } },
    components: inOrder(components, (one) => one["bom-ref"]),
    dependencies: inOrder(
      dependencies.map((one) => ({ ...one, dependsOn: [...one.dependsOn].sort() })),
      (one) => one.ref,
    ),
  };
  const lines = Object.entries(list).map(([key, value]) => {
    const written = Array.isArray(value)
      ? `[\n${value.map((each) => JSON.stringify(each)).join(",\n")}\n]`
      : JSON.stringify(value);
    return `${JSON.stringify(key)}: ${written}`;
  });
  return `{\n${lines.join(",\n")}\n}\n`;
}

function inOrder<T>(list: readonly T[], by: (one: T) => string): T[] {
  const keyed = list.map((one) => [by(one) + JSON.stringify(one), one] as const);
  return keyed.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([, one]) => one);
}

function told({ name, version, sha512 }: Component): string {
  return `${name}@${version} ${sha512}`;
}

function once(list: readonly Component[]): Component[] {
  return [...new Map(list.map((one) => [told(one), one])).values()];
}
