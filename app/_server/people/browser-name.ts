// Words that nearly every browser puts into what it calls itself, and so tell none from another.
const SAID_BY_ALL = new Set(["Mozilla", "AppleWebKit", "KHTML", "Gecko", "Version", "Mobile", "Safari"]);
const SYSTEMS = ["Android", "iPhone", "iPad", "Windows", "Mac OS", "CrOS", "Linux"];
/** A name in a table; what a program calls itself may be anything. */
const LONGEST = 24;

/** Browser and system from what a browser calls itself; an empty text where it says none. */
export function browserName(userAgent: string | null): { readonly browser: string; readonly system: string } {
  const text = userAgent ?? "";
  const named = [...text.matchAll(/([A-Za-z][\w-]*)\/[\d.]+/g)].map((match) => match[1] ?? "");
  const own = named.filter((each) => !SAID_BY_ALL.has(each));
  return {
    browser: (own.at(-1) ?? named.at(-1) ?? "").slice(0, LONGEST),
    system: SYSTEMS.find((each) => text.includes(each)) ?? "",
  };
}
