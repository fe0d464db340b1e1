import type { Threshold } from "./threshold";

/** Thresholds of the plan that would settle an open track. */
export const SETTLE_THRESHOLDS = {
  settleChance: {
    value: 0.8,
    unit: "probability",
    bounds: [0.01, 0.999],
    reason: "a plan is only offered when it settles the matter four times in five",
    source: "the customary power of a study",
  },
  settleSessions: {
    value: 8,
    unit: "further sessions",
    bounds: [1, 40],
    reason: "a longer plan is the rest of the season, not a plan",
    source: "own choice",
  },
  settleSessionPrice: {
    value: 3,
    unit: "swing-free price of a session",
    bounds: [0, 1000],
    reason: "setting up and sending a film costs as much as reading ten swings",
    source: "own choice",
  },
  settleSwingPrice: {
    value: 0.3,
    unit: "price of a swing",
    bounds: [0, 1000],
    reason: "setting up and sending a film costs as much as reading ten swings",
    source: "own choice",
  },
  settleCarePrice: {
    value: 1.2,
    unit: "factor on the price when the camera error is halved",
    bounds: [1, 1000],
    reason: "sticks and a plumb line take time",
    source: "own choice",
  },
  settleDraws: {
    value: 24,
    unit: "drawn futures a plan",
    bounds: [5, 10000],
    reason: "evenly spread draws; more change the chosen plan by less than a step and cost time",
    source: "own measurement",
  },
  settlePointing: {
    value: 0.25,
    unit: "probability of a lasting change of the likelier direction",
    bounds: [0, 1],
    reason: "films for a change that isn't there three times in four are not worth asking for",
    source: "own choice",
  },
  settleDirection: {
    value: 0.8,
    unit: "share of the change's weight that goes the likelier way",
    bounds: [0.5, 1],
    reason: "a change that may as well go the other way looks like nothing yet",
    source: "own choice",
  },
  settleExcludeDraws: {
    value: 6,
    unit: "drawn futures of the largest plan",
    bounds: [5, 10000],
    reason: "every open track asks for them; with six the promise of .8 was kept in .84, with five in .77",
    source: "own simulation",
  },
} as const satisfies Readonly<Record<string, Threshold>>;
