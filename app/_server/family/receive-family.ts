import type { RowOf } from "../access/matrix";
import { cookiesIn, seeOther } from "../access/sign-in-desk";
import { readLimited } from "../door/read-limited";
import { answerDiskFailure } from "../door/when-disk-fails";
import { admitFamily, type FamilyViewer } from "../family-gate";
import { whenWritable } from "../import/write-gate";
import { wishIn } from "../viewer";
import { deadFamilyAnswer } from "./dead-page";
import type { FamilyOutcome } from "./family-desk";
import { strangerWords } from "./stranger-words";

/** Where on the page it is told what became of a press. */
const PLACES: Partial<Readonly<Record<FamilyOutcome, string>>> = { refused: "#log" };

/** A page's form has a hundredth of this; nobody is asked who they are before it is read. */
const LIMIT_BYTES = 16 * 1024;

/** The fields of a form as a page without scripts sends it; what is larger, or broke off, is as good as empty. */
async function typedIn(request: Request): Promise<FormData> {
  const body = await readLimited(request, LIMIT_BYTES);
  const data = new FormData();
  if (body.kind !== "ok") return data;
  for (const [name, value] of new URLSearchParams(Buffer.from(body.bytes).toString("utf8"))) data.append(name, value);
  return data;
}

/** What a press came to, and of something kept on a phone why not. */
type Worked = FamilyOutcome | { readonly outcome: FamilyOutcome; readonly why: string };

/** The page's own script asks for it; a form without scripts is led to the page. */
const JSON_TYPE = "application/json";

/**
 * Does what a button of a family's page asks for and leads back to the page. It is no action of the framework: so a link that has
 * ended meanwhile is answered by a whole page, with scripts and without.
 */
export async function receiveFamily(
  row: RowOf<"link">,
  request: Request,
  pageId: string,
  work: (family: FamilyViewer, data: FormData) => Worked,
): Promise<Response> {
  const wish = wishIn(cookiesIn(request));
  const data = await typedIn(request);
  await whenWritable();
  // Asked last, so that a link taken back while the form was on its way does nothing any more.
  const family = await admitFamily(row, request.headers, pageId, wish);
  if (family === null) return deadFamilyAnswer(strangerWords(wish, request.headers));
  return answerDiskFailure(family.words, async () => {
    const worked = work(family, data);
    const { outcome, why } = typeof worked === "string" ? { outcome: worked, why: "" } : worked;
    const to = `/family/${family.link.id}?done=${outcome}${PLACES[outcome] ?? ""}`;
    return request.headers.get("accept") === JSON_TYPE ? Response.json({ outcome, why, to }) : seeOther(to);
  });
}
