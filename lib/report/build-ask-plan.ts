import type { Fundamental } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { PlanAnswer } from "@/lib/verdict/ask-plan";
import type { AskableCare } from "@/lib/verdict/askable-cares";
import { POLICY, SETTLE_SWINGS } from "@/lib/verdict/policy";
import type { Words } from "@/lib/words/catalogue";
import { decimalsFor, sayLimit, sayNumber, withUnit } from "@/lib/words/number-words";
import { sayChance, sayMeantSize } from "@/lib/words/say-settle";
import type { AskPlanPart, PlanChoice, PlanSaid } from "./ask-plan-model";
import type { Fact } from "./basic-model";
import { cameraCare } from "./camera-care";
import type { FundamentalSource } from "./fundamental-source";
import { planOnOffer } from "./plan-on-offer";
import { provedAlone } from "./said";
import { takenPlan } from "./taken-plan";
import type { AnsweredPlan, WishedPlan } from "./wished-plan";

/** What it takes of the phone, as a plan's words end; empty: nothing more than usual. */
function sayCare(words: Words, captureSd: number, usual: number | null, fundamental: Fundamental): string {
  const care = cameraCare({ captureSd }, usual, fundamental);
  return care === null ? "" : words.say(`settle.care.${care}`);
}

/** What films that somebody asks about would tell; every chance is the engine's. */
export function sayAnswer(
  words: Words,
  verdict: Pick<TrackVerdict, "usualCaptureSd" | "changeBelow">,
  fundamental: Fundamental,
  answer: PlanAnswer,
): Omit<PlanSaid, "takes"> {
  const { unit } = fundamental;
  const { settles, ifReal, ifNothing } = answer;
  const facts: Fact[] = [
    {
      name: words.say("ask-plan.settles"),
      value: words.say("ask-plan.chance", { chance: sayChance(words, settles) }),
      note: words.say("ask-plan.settles.if"),
    },
  ];
  if (ifReal !== null)
    facts.push({
      name: words.say("ask-plan.proves"),
      value: words.say("ask-plan.chance", { chance: sayChance(words, ifReal.proves) }),
      note: words.say("ask-plan.proves.if", {
        size: sayMeantSize(words, ifReal.size, unit),
        likely: sayNumber(words, Math.round(ifReal.probability * 100), 0),
      }),
    });
  facts.push(
    ifNothing === null
      ? { name: words.say("ask-plan.bounds"), value: words.say("ask-plan.bounds.none"), note: "" }
      : {
          name: words.say("ask-plan.bounds"),
          value: words.say("ask-plan.bounds.below", { limit: sayLimit(words, ifNothing.changeBelow, unit) }),
          note: words.say("ask-plan.bounds.if", {
            chance: sayChance(words, ifNothing.chance),
            known: verdict.changeBelow === null ? "no" : "yes",
            now: verdict.changeBelow === null ? "" : sayLimit(words, verdict.changeBelow, unit),
          }),
        },
  );
  return {
    plan: words.say("ask-plan.plan", {
      films: answer.sessions,
      swings: answer.swingsEach,
      care: sayCare(words, answer.captureSd, verdict.usualCaptureSd, fundamental),
    }),
    facts,
    enough: words.say(`ask-plan.enough.${takenPlan(answer)?.kind ?? "none"}`),
  };
}

function choices(
  words: Words,
  source: Pick<FundamentalSource, "history" | "verdict">,
  asked: WishedPlan,
): readonly PlanChoice[] {
  const { history, verdict } = source;
  const numbers = (from: number, to: number): readonly string[] =>
    Array.from({ length: to - from + 1 }, (_, place) => String(from + place));
  const choice = (name: PlanChoice["name"], options: PlanChoice["options"], value: string): PlanChoice => ({
    name,
    label: words.say(`ask-plan.${name}`),
    options,
    at: Math.max(
      0,
      options.findIndex((option) => option.value === value),
    ),
  });
  const careLabel = ({ name, care }: AskableCare): string => {
    const usual = verdict.usualCaptureSd ?? 0;
    const half = 1.96 * usual * care;
    return words.say(`ask-plan.care.${name}`, {
      half: withUnit(
        words,
        words.say("number.half-only", { half: sayNumber(words, half, decimalsFor(half)) }),
        history.fundamental.unit,
      ),
      care: sayCare(words, usual * care, verdict.usualCaptureSd, history.fundamental),
    });
  };
  return [
    choice(
      "films",
      numbers(1, Math.round(POLICY.settleSessions)).map((value) => ({
        value,
        label: words.say("ask-plan.films.option", { films: Number(value) }),
      })),
      String(asked.sessions),
    ),
    choice(
      "swings",
      numbers(Math.min(...SETTLE_SWINGS), Math.max(...SETTLE_SWINGS)).map((value) => ({
        value,
        label: words.say("ask-plan.swings.option", { swings: Number(value) }),
      })),
      String(asked.swingsEach),
    ),
    choice(
      "care",
      asked.cares.map((care) => ({ value: care.name, label: careLabel(care) })),
      asked.care.name,
    ),
  ];
}

/** What plans the very films that were asked about; null: too small a chance, or they are on offer already. */
function takes(
  words: Words,
  { history, verdict }: FundamentalSource,
  { plan, answer }: AnsweredPlan,
): PlanSaid["takes"] {
  const offered = planOnOffer(verdict);
  const isOffered =
    offered !== null &&
    offered.sessions === answer.sessions &&
    offered.swingsEach === answer.swingsEach &&
    Math.abs(offered.captureSd - answer.captureSd) < 1e-9;
  if (takenPlan(answer) === null || isOffered) return null;
  const fields = {
    ...{ studentId: history.studentId, fundamentalId: history.fundamental.id, clubGroup: history.clubGroup },
    ...{ state: "planned", films: String(plan.sessions), swings: String(plan.swingsEach), care: plan.care.name },
  };
  return {
    label: words.say("ask-plan.take"),
    explains: words.say("settle.ask.planned.explains"),
    hidden: Object.entries(fields).map(([name, value]) => ({ name, value })),
  };
}

/** The question what other films would tell, with the answer for those asked about; null: nothing is asked. */
export function buildAskPlan(words: Words, source: FundamentalSource): AskPlanPart | null {
  const { history, verdict, asked, asking } = source;
  if (!asked || provedAlone(verdict) === "alone" || asking?.state === "stopped") return null;
  return {
    heading: words.say("ask-plan.heading"),
    explains: words.say("ask-plan.explains"),
    hidden: [{ name: "club", value: history.clubGroup }],
    choices: choices(words, source, asked.plan),
    submit: words.say("ask-plan.submit"),
    said: {
      ...sayAnswer(words, verdict, history.fundamental, asked.answer),
      takes: takes(words, source, asked),
    },
    failed: words.say("ask-plan.failed"),
  };
}
