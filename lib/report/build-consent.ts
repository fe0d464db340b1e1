import {
  CONSENT_KINDS,
  type Consent,
  type ConsentAsked,
  type ConsentKind,
  type ConsentStanding,
  consentStanding,
  giverOf,
} from "@/lib/domain/consent";
import { usualConsent } from "@/lib/domain/usual-consent";
import { withdrawable } from "@/lib/domain/withdrawable";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { Link } from "./basic-model";
import type { TextPage } from "./form-model";
import type { HappenPage, HappenPart } from "./happen-model";
import { buildPrivacyLinks } from "./privacy-links";

/** A consent as the page shows it. */
export type ShownConsent = Consent & { readonly recordedAt: string; readonly withdrawnBy: string | null };

/** What the page of a student's consent rests on. */
export interface ConsentSource {
  readonly student: {
    readonly id: string;
    readonly alias: string;
    readonly birthYear: number | null;
    readonly departedOn: string | null;
  };
  /** In the order of their recording. */
  readonly consents: readonly ShownConsent[];
  readonly today: string;
  readonly academy: { readonly name: string; readonly keepMonths: number; readonly ownConsentAge: number };
  readonly dayOf: (instant: string) => string;
}

/** The page: what holds and why, the history, and the words with which consent is asked anew. */
export interface ConsentPage extends HappenPage {
  readonly message: {
    readonly margin: string;
    readonly explains: string;
    readonly label: string;
    readonly text: string;
  };
  readonly links: TextPage["parts"][number];
}

const askedOf = ({ student, today, academy }: ConsentSource): ConsentAsked => ({
  day: today,
  birthYear: student.birthYear,
  ownConsentAge: academy.ownConsentAge,
});

/** Why one ends, as an argument of messages. */
const ENDS = { lapsed: "day", withdrawn: "taken", "own-age": "age" } as const;

/** Since when or until when a standing is so, as its messages take it. */
function daysOf(words: Words, standing: ConsentStanding<ShownConsent>): Readonly<Record<string, string>> {
  const say = (day: string | null): string => (day === null ? "" : sayDay(words, day, "full"));
  if (standing.kind === "given")
    return {
      until: say(standing.until),
      ends: standing.ends === null ? "never" : ENDS[standing.ends],
      who: standing.by.map((each) => each.givenBy).join(", "),
    };
  if (standing.kind === "none") return {};
  return { day: say(standing.kind === "not-yet" ? standing.from : standing.since) };
}

function standingPart(words: Words, source: ConsentSource, kind: ConsentKind): HappenPart {
  const asked = askedOf(source);
  const standing = consentStanding(source.consents, kind, asked);
  const { alias } = source.student;
  const args = { alias, age: asked.ownConsentAge, ...daysOf(words, standing) };
  const unknownAge =
    asked.birthYear === null && standing.kind === "given" && standing.by.some((each) => each.giverIs === "guardian");
  return {
    margin: words.say(`consent.kind.${kind}`),
    explains: words.say(`consent.kind.${kind}.explains`),
    heading: words.say(`consent.${kind}.${standing.kind}`, args),
    paragraphs: [
      words.say(`consent.because.${standing.kind}`, args),
      ...(unknownAge ? [words.say("consent.no-birth-year", args)] : []),
      ...(standing.kind === "given" ? [] : [words.say(`consent.${kind}.then`)]),
    ],
    facts: [],
    table: null,
    open: null,
  };
}

function historyPart(words: Words, source: ConsentSource): HappenPart {
  const asked = askedOf(source);
  const latest = source.consents.toReversed();
  const day = (text: string | null): string => (text === null ? "" : sayDay(words, text, "day-year"));
  return {
    margin: words.say("consent.history"),
    explains: words.say("consent.history.explains"),
    heading: words.say("consent.history.heading", { count: latest.length }),
    paragraphs: [],
    facts: [],
    table:
      latest.length === 0
        ? null
        : {
            caption: words.say("consent.history.caption"),
            columns: [
              "kind",
              "given-by",
              "giver",
              "from",
              "until",
              "recorded",
              "withdrawn",
              "withdrawn-by",
              "state",
            ].map((column) => ({ label: words.say(`consent.column.${column}`), align: "start" as const })),
            rows: latest.map((each) => {
              const { kind } = consentStanding([each], each.kind, asked);
              return {
                cells: [
                  words.say(`consent.kind.${each.kind}`),
                  each.givenBy,
                  words.say(`consent.giver.${each.giverIs}`),
                  day(each.from),
                  each.until === null ? words.say("consent.no-end") : day(each.until),
                  day(source.dayOf(each.recordedAt)),
                  day(each.withdrawnOn),
                  each.withdrawnBy ?? "",
                  words.say(`consent.state.${kind}`),
                ],
                tone: kind === "given" || kind === "not-yet" ? ("plain" as const) : ("quiet" as const),
              };
            }),
          },
    open: null,
  };
}

/** A message to be sent as it is, in the words of whoever is asked. */
function askingText(words: Words, source: ConsentSource): string {
  const { alias } = source.student;
  const { from, until } = usualConsent(source.consents, CONSENT_KINDS, askedOf(source));
  const args = {
    alias,
    academy: source.academy.name,
    months: source.academy.keepMonths,
    giver: giverOf({ ...askedOf(source), day: from }),
    from: sayDay(words, from, "day-year"),
    until: sayDay(words, until, "day-year"),
  };
  return ["hello", "why", "kept", "how-long", "who", "questions", "no", "rules"]
    .map((line) => words.say(`consent.message.${line}`, args))
    .join("\n\n");
}

/** What holds of one student's consent and why, the history, and how it is asked anew. */
export function buildConsentPage(words: Words, source: ConsentSource): ConsentPage {
  const { student, consents, today } = source;
  const page = `/students/${student.id}`;
  const measure = consentStanding(consents, "measure", askedOf(source));
  const canWithdraw = withdrawable(consents, today).length > 0;
  const action = (href: string, key: string): Link => ({ href: `${page}/${href}`, label: words.say(key) });
  return {
    title: words.say(`consent.title.${measure.kind === "given" ? "given" : "not-given"}`, { alias: student.alias }),
    documentTitle: words.say("document-title", { page: words.say("consent") }),
    lede: words.say("consent.lede"),
    back: { href: page, label: words.say("fundamental-page.back", { alias: student.alias }) },
    actions: [
      ...(canWithdraw ? [action("consent/withdraw", "consent.withdraw")] : []),
      action("departed", student.departedOn === null ? "departed.open" : "departed.change"),
    ],
    parts: [...CONSENT_KINDS.map((kind) => standingPart(words, source, kind)), historyPart(words, source)],
    cautions: [words.say("consent.rules")],
    message: {
      margin: words.say("consent.ask"),
      explains: words.say("consent.ask.explains"),
      label: words.say("consent.ask.label"),
      text: askingText(words, source),
    },
    links: {
      margin: words.say("privacy.links"),
      heading: words.say("consent.more"),
      paragraphs: [],
      links: buildPrivacyLinks(words, student.id, "consent"),
    },
  };
}
