import { CHECKPOINTS, type Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { Words } from "@/lib/words/catalogue";
import { sayFundamental, sayPlus } from "@/lib/words/say-fundamental";
import { buildSignDrawing } from "./build-sign-drawing";
import type { GridColumn } from "./grid-model";

/** The head of one fundamental in a grid: name, unit, sign in words and drawn, where it is read. */
export function buildGridColumn(words: Words, fundamental: Fundamental, hand: Hand): GridColumn {
  return {
    fundamentalId: fundamental.id,
    label: sayFundamental(words, fundamental),
    mark: "",
    unit: words.say(`unit.${fundamental.unit}.short`),
    sign: sayPlus(words, fundamental),
    drawing: buildSignDrawing(words, fundamental, hand),
    checkpoint: words.say("grid.checkpoint", {
      checkpoint: words.say(`checkpoint.${fundamental.checkpoint}`),
      view: words.say(`view.${fundamental.view}`),
    }),
    checkpointOrder: CHECKPOINTS.indexOf(fundamental.checkpoint),
    plausible: fundamental.plausible,
  };
}
