import { createRequire } from "node:module";

/** An independent reader of XML that came with the reader of workbooks; it throws at the first thing that is wrong. */
export function readXml(text: string): { readonly tags: readonly string[]; readonly texts: readonly string[] } {
  const { Parser } = createRequire(import.meta.url)("saxen") as { Parser: new () => Record<string, CallableFunction> };
  const parser = new Parser();
  const [tags, texts]: [string[], string[]] = [[], []];
  const stop = (error: unknown) => {
    throw error instanceof Error ? error : new Error(String(error));
  };
  parser.on?.("error", stop);
  parser.on?.("warn", stop);
  parser.on?.("openTag", (tag: string, attributes: () => unknown) => {
    attributes();
    tags.push(tag);
  });
  parser.on?.("text", (value: string, decode: (text: string) => string) => texts.push(decode(value)));
  parser.parse?.(text);
  return { tags, texts };
}
