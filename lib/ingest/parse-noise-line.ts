import { z } from "zod";
import { LARGEST, type LineOutcome, parseJsonLine, wrong } from "./json-line";

const number = z.number(wrong("not-number")).refine((value) => Math.abs(value) <= LARGEST, "too-large");
const aboveZero = number.refine((value) => value > 0, "not-above-zero");
const fromZero = number.refine((value) => value >= 0, "below-zero");

const cell = z.object(
  {
    daySd: aboveZero,
    correlation: fromZero.refine((value) => value < 1, "not-below-one"),
    fadesBy: z.literal("days", wrong("not-days")).optional(),
    errorPersistence: fromZero.refine((value) => value < 1, "not-below-one").optional(),
    weight: fromZero,
  },
  wrong("not-object"),
);

const line = z.object(
  {
    noiseModel: z.string(wrong("not-text")),
    pool: z.string(wrong("not-text")).nullish(),
    kind: z.enum(["learned", "start"], wrong("not-kind")),
    cells: z
      .array(cell, wrong("not-list"))
      .refine((cells) => Math.abs(cells.reduce((sum, each) => sum + each.weight, 0) - 1) < 1e-6, "weights-sum"),
    replicateSd: aboveZero.nullable(),
    spread: z.literal("local", wrong("not-local")).optional(),
    priorChange: fromZero.refine((value) => value <= 1, "not-share"),
    learnedFrom: fromZero.refine(Number.isInteger, "not-whole"),
  },
  wrong("not-object"),
);

/** One noise model of a file: its pool (null: tracks that name none), and the model under its name. */
export interface NoiseLine {
  readonly pool: string | null;
  readonly model: {
    readonly id: string;
    readonly kind: "learned" | "start";
    readonly cells: readonly {
      readonly daySd: number;
      readonly correlation: number;
      readonly fadesBy?: "days" | undefined;
      readonly errorPersistence?: number | undefined;
      readonly weight: number;
    }[];
    readonly replicateSd: number | null;
    readonly spread?: "local" | undefined;
    readonly priorChange: number;
    readonly learnedFrom: number;
  };
}

/** Reads one line of a file of noise models, oldest first: a model, or what is wrong with it and where. */
export function parseNoiseLine(text: string): LineOutcome<NoiseLine> {
  const outcome = parseJsonLine(text, line, "noiseModel");
  if (outcome.kind === "issue") return outcome;
  const { noiseModel, pool, ...model } = outcome.value;
  return { kind: "ok", value: { pool: pool ?? null, model: { id: noiseModel, ...model } } };
}
