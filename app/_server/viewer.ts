import { cookies } from "next/headers";
import { ACADEMY_CHOICES, type AcademyChoice, findAcademyDatabase } from "./database";
import { checkHost } from "./door/reached";

const ACADEMY_COOKIE = "proofband-academy";
const LOCALE_COOKIE = "proofband-locale";
const YEAR_SECONDS = 365 * 24 * 3600;

/** What a browser says about its viewer; it proves nothing, and only chooses among what the viewer may see. */
export interface ViewerWish {
  readonly choice: AcademyChoice | null;
  readonly locale: string | null;
}

/** The wish in a browser's cookies. */
export function wishIn(jar: { get(name: string): { readonly value: string } | undefined }): ViewerWish {
  const choice = jar.get(ACADEMY_COOKIE)?.value;
  return {
    choice: ACADEMY_CHOICES.find((each) => each === choice) ?? null,
    locale: jar.get(LOCALE_COOKIE)?.value ?? null,
  };
}

export async function readWish(): Promise<ViewerWish> {
  return wishIn(await cookies());
}

/** The academy that a browser is shown: the wished one if it is there; else the own one; else the demo. */
export async function findWishedAcademy(wish: ViewerWish) {
  const order: AcademyChoice[] = wish.choice === "demo" ? ["demo", "own"] : ["own", "demo"];
  for (const choice of order) {
    const found = await findAcademyDatabase(choice);
    if (found) return { ...found, choice };
  }
  return null;
}

/** Lets a browser see one of the two academies from now on, as a header line. */
export function academyCookie(choice: AcademyChoice, sent: Headers): string {
  const secure = checkHost(sent).startsWith("https:") ? "; Secure" : "";
  return `${ACADEMY_COOKIE}=${choice}; Path=/; HttpOnly; SameSite=Lax; Max-Age=${YEAR_SECONDS}${secure}`;
}
