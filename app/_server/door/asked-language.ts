import { headers } from "next/headers";

/** Bears to a family's page in which language the family reads, before it is made; set, or taken away, at the outermost door. */
export const LANGUAGE_HEADER = "x-proofband-language";

/** In which language the family of this request reads; null: it is no family's. */
export async function askedLanguage(): Promise<string | null> {
  return (await headers()).get(LANGUAGE_HEADER);
}
