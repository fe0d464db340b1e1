import type { PeoplePage, PeoplePart } from "@/lib/report/people-model";
import type { LogIn } from "../access/log-in";
import { mustAddSecondStep, needsSecondStep } from "../access/second-step";
import type { Viewer } from "../gate";
import { qrPicture } from "./qr-picture";
import { sayWhy } from "./say-why";
import { type Begun, findBegun, takeCodes } from "./second-step-desk";
import { peoplePart, smallForm } from "./small-form";

/** What the page of the second step is asked with. */
export interface SecondStepWish {
  readonly why?: string;
}

function passwordPart(viewer: Viewer, state: "begin" | "drop", why: string | undefined): PeoplePart {
  const { words } = viewer;
  const form = smallForm(
    words,
    `second-step.${state}`,
    [{ name: "password", kind: "password", required: "yes" }],
    sayWhy(words, why, { current: "password" }),
  );
  return peoplePart(words.say(`second-step.${state}.margin`), {
    paragraphs: [words.say(`second-step.${state}.text`)],
    forms: [{ act: state, form }],
  });
}

function begunParts({ words }: Viewer, begun: Begun, why: string | undefined): PeoplePart[] {
  const groups = begun.secret.match(/.{1,4}/g) ?? [];
  const code = smallForm(
    words,
    "second-step.prove",
    [{ name: "code", kind: "code", required: "yes" }],
    sayWhy(words, why, { current: "code" }),
  );
  return [
    peoplePart(words.say("second-step.take.margin"), {
      paragraphs: [words.say("second-step.take.text")],
      once: {
        lines: [groups.join(" ")],
        picture: { ...qrPicture(begun.uri), label: words.say("second-step.take.picture") },
      },
    }),
    peoplePart(words.say("second-step.prove.margin"), {
      paragraphs: [words.say("second-step.prove.text")],
      forms: [{ act: "prove", form: code }],
    }),
  ];
}

function onParts(viewer: Viewer, why: string | undefined): PeoplePart[] {
  const { words } = viewer;
  const codes = takeCodes(viewer);
  const kept =
    codes === null
      ? []
      : [
          peoplePart(words.say("second-step.codes.margin"), {
            heading: words.say("second-step.codes", { count: codes.length }),
            paragraphs: [words.say("second-step.codes.text")],
            once: { lines: codes, picture: null },
          }),
        ];
  return [...kept, passwordPart(viewer, "drop", why)];
}

/** The page of the second step: off, begun, or on. What is shown once is on it once. */
export function loadSecondStep(viewer: Viewer, logIn: LogIn, { why }: SecondStepWish): PeoplePage {
  const { words } = viewer;
  const begun = logIn.hasSecondStep ? null : findBegun(viewer);
  const state = logIn.hasSecondStep ? "on" : begun ? "begun" : "off";
  const parts = logIn.hasSecondStep
    ? onParts(viewer, why)
    : begun
      ? begunParts(viewer, begun, why)
      : [passwordPart(viewer, "begin", why)];
  const asked = mustAddSecondStep(viewer, logIn) ? "must" : needsSecondStep(viewer) ? "should" : "may";
  return {
    title: words.say(`second-step.title.${state}`),
    documentTitle: words.say("document-title", { page: words.say("second-step.title.off") }),
    lede: words.say(logIn.hasSecondStep ? "second-step.lede.on" : `second-step.lede.${asked}`),
    back: { href: "/account", label: words.say("account.back") },
    notice: "",
    parts,
  };
}
