import type { BuiltInId } from "./catalogue";
import type { FundamentalShape, OwnId } from "./fundamental-shape";

export {
  type CameraSensitivity,
  CHECKPOINTS,
  type Checkpoint,
  type EarlierDefinition,
  type Edges,
  isOwnId,
  type Measuring,
  type OwnId,
  PHASES,
  type Phase,
  UNITS,
  type Unit,
  VIEWS,
  type View,
} from "./fundamental-shape";

/** Id of a fundamental: built in, or an academy's own. */
export type FundamentalId = BuiltInId | OwnId;

/** One measured fundamental: everything that behaviour hangs on. */
export type Fundamental = FundamentalShape<FundamentalId>;
