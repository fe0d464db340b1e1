import {
  CHECKPOINTS,
  type Checkpoint,
  type Fundamental,
  type OwnId,
  type Phase,
  UNITS,
  VIEWS,
} from "@/lib/domain/fundamental";
import { everywhere } from "@/lib/domain/goal-edges";
import { HALF_OF_SD, shownHalf } from "@/lib/domain/half-of-sd";
import type { FormOutcome } from "./field-issue";
import { type Collect, choice, collectIssues, neededText } from "./form-fields";
import { neededNumber, readNumber } from "./read-number";
import { nameKey } from "./text-key";

/** The word of a fundamental whose camera figures are its own, and of one that comes before every other. */
export const OWN_FIGURES = "own";
export const FIRST_OF_ALL = "first";

/** Values in a unit, errors in it, and units per degree: beyond, somebody slipped (a right angle is 90, a stance 100). Own choice. */
const LARGEST = 1000;
const LARGEST_PER_DEGREE = 20;

/** What a form about an academy's own fundamental is read against. */
export interface DefinitionContext {
  readonly today: string;
  /** Every fundamental, built-in and own, in the order of work, the one in hand among them. */
  readonly all: readonly Fundamental[];
  /** The name of each of them but the one in hand, as pages say it. */
  readonly names: readonly string[];
  /** The one in hand, and whether anything was read of it; null: it is new. */
  readonly now: { readonly fundamental: Fundamental; readonly read: "yes" | "no" } | null;
}

/** An own fundamental as it is defined from now on; its id isn't known yet where it is new. */
export interface EnteredDefinition {
  readonly becomes: Omit<Fundamental, "id" | "earlier">;
  /** Empty: it is new, and nobody asks. */
  readonly why: string;
}

/** Where a checkpoint stands in the order of work. */
export function phaseOf(checkpoint: Checkpoint): Phase {
  if (checkpoint === "setup") return "before-swing";
  return checkpoint === "impact" ? "impact" : "in-swing";
}

/** A half typed for an sd that was shown so stays that sd: what is printed has fewer digits. */
function sdOf(half: number, was: number | undefined): number {
  return was !== undefined && shownHalf(was) === String(half) ? was : half / HALF_OF_SD;
}

/** After which one it comes: between that and the next in the order of work. */
function orderAfter(after: string, { all, now }: DefinitionContext): number {
  const others = all.filter(({ id }) => id !== now?.fundamental.id);
  const place = others.findIndex(({ id }) => id === after);
  const before = others[place]?.order ?? (others[0]?.order ?? 0) - 2;
  const next = others[place + 1]?.order ?? before + 2;
  return (before + next) / 2;
}

/** The one after which a fundamental comes, by the word of the form. */
export function comesAfter(all: readonly Fundamental[], id: string): string {
  return all[all.findIndex((each) => each.id === id) - 1]?.id ?? FIRST_OF_ALL;
}

type Film = Pick<Fundamental, "unit" | "view" | "checkpoint" | "mirrors">;

function readFilm(data: FormData, { now }: DefinitionContext, add: Collect): Film {
  if (now?.read === "yes") return now.fundamental;
  return {
    unit: choice(data, "unit", UNITS, "deg", add),
    view: choice(data, "view", VIEWS, "face-on", add),
    checkpoint: choice(data, "checkpoint", CHECKPOINTS, "top", add),
    mirrors: choice(data, "mirrors", ["mirrors", "same"], "mirrors", add),
  };
}

type Camera = Pick<Fundamental, "cameraSdUnknown" | "sensitivity">;

function readCamera(data: FormData, { all, now }: DefinitionContext, film: Film, add: Collect): Camera {
  const like = choice(data, "like", [OWN_FIGURES, ...all.map(({ id }) => id)], OWN_FIGURES, add);
  const model = all.find(({ id }) => id === like);
  if (model !== undefined) {
    if (model.unit !== film.unit || model.view !== film.view) add("like", "definition-unlike");
    return { cameraSdUnknown: model.cameraSdUnknown, sensitivity: model.sensitivity };
  }
  const perDegree = (name: "yaw" | "roll" | "offset"): number =>
    readNumber(data, name, [0, LARGEST_PER_DEGREE], add) ?? 0;
  return {
    cameraSdUnknown: sdOf(neededNumber(data, "camera", [0, LARGEST], add), now?.fundamental.cameraSdUnknown),
    sensitivity: { yaw: perDegree("yaw"), roll: perDegree("roll"), offset: perDegree("offset") },
  };
}

function readGoals(data: FormData, { now }: DefinitionContext, add: Collect): Fundamental["goals"] {
  if (now?.read === "yes") return now.fundamental.goals;
  const edge = (name: "low" | "high") => readNumber(data, name, [-LARGEST, LARGEST], add);
  const [low, high] = [edge("low"), edge("high")];
  if (low !== null && high !== null && low >= high) add("high", "goal-order");
  return everywhere(low, high);
}

function readPlausible(data: FormData, goals: Fundamental["goals"], add: Collect): Fundamental["plausible"] {
  const [low, high] = (["least", "most"] as const).map((name) =>
    neededNumber(data, name, [-LARGEST, LARGEST], add),
  ) as [number, number];
  if (low >= high) add("most", "goal-order");
  const band = goals.iron;
  const isBeyond = (edge: number | null): boolean => edge !== null && (edge < low || edge > high);
  if (isBeyond(band.low) || isBeyond(band.high)) add("most", "definition-band-beyond");
  return { low, high };
}

/** What two definitions say, name by name, for comparing. */
function said(definition: Omit<Fundamental, "id" | "earlier">): string {
  const { id: _id, earlier: _earlier, ...rest } = { id: "", earlier: [], ...definition };
  return JSON.stringify(
    Object.entries(rest)
      .filter(([, value]) => value !== undefined && value !== null)
      .sort(),
  );
}

/**
 * A form that defines an academy's own fundamental, or changes its definition. Once something was read of it, unit, view,
 * checkpoint and sign stay: another one of these is another fundamental. Its band is then set on the bands' own page. The same
 * again is refused: there is nothing to keep.
 */
export function parseDefinitionForm(data: FormData, context: DefinitionContext): FormOutcome<EnteredDefinition> {
  const { issues, add } = collectIssues();
  const { now, names, today, all } = context;
  const was = now?.fundamental;
  const ownName = neededText(data, "name", 60, add);
  if (names.some((name) => nameKey(name) === nameKey(ownName))) add("name", "definition-name-taken");
  const film = readFilm(data, context, add);
  const after = choice(data, "after", [FIRST_OF_ALL, ...all.map(({ id }) => id)], FIRST_OF_ALL, add);
  const stays = was !== undefined && comesAfter(all, was.id) === after;
  const goals = readGoals(data, context, add);
  const half = neededNumber(data, "reading", [0, LARGEST], add);
  if (half === 0 && data.get("reading") !== "") add("reading", "definition-no-error");
  const worthwhile = readNumber(data, "worthwhile", [0, LARGEST], add);
  if (worthwhile === 0) add("worthwhile", "definition-no-worth");
  const offered = now === null ? "yes" : choice(data, "offered", ["yes", "no"], "yes", add);
  const becomes: EnteredDefinition["becomes"] = {
    ownName,
    ownHow: neededText(data, "how", 300, add),
    ownPlus: neededText(data, "plus", 60, add),
    unit: film.unit,
    view: film.view,
    checkpoint: film.checkpoint,
    mirrors: film.mirrors,
    phase: phaseOf(film.checkpoint),
    order: stays ? was.order : orderAfter(after, context),
    derivedFrom: null,
    plausible: readPlausible(data, goals, add),
    goals,
    readerSd: sdOf(half, was?.readerSd),
    ...readCamera(data, context, film, add),
    ...(worthwhile === null ? {} : { worthwhile }),
    retiredOn: offered === "yes" ? null : (was?.retiredOn ?? today),
  };
  const why = now === null ? "" : neededText(data, "why", 300, add);
  if (was !== undefined && issues.length === 0 && said(was) === said(becomes)) add("why", "definition-same");
  return issues.length > 0 ? { kind: "issues", issues } : { kind: "ok", value: { becomes, why } };
}

/** An id for a new one: its name in plain letters, with a number where another one has it. */
export function ownIdFor(name: string, taken: ReadonlySet<string>): OwnId {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 40);
  const base = `own-${plain === "" ? "measure" : plain}` as const;
  for (let number = 1; ; number++) {
    const id: OwnId = number === 1 ? base : `${base}-${number}`;
    if (!taken.has(id)) return id;
  }
}
