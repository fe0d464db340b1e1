import type { ClubGroup } from "./club-group";
import type { Edges, FundamentalShape, OwnId } from "./fundamental-shape";

function everywhere(low: number | null, high: number | null): Record<ClubGroup, Edges> {
  const edges = { low, high };
  return { "short-iron": edges, iron: edges, hybrid: edges, wood: edges, driver: edges };
}

function byClub(shortIron: Edges, iron: Edges, hybrid: Edges, wood: Edges, driver: Edges): Record<ClubGroup, Edges> {
  return { "short-iron": shortIron, iron, hybrid, wood, driver };
}

const edges = (low: number, high: number): Edges => ({ low, high });

/**
 * The built-in fundamentals in the order of work: grip before anything, set-up before the swing, the pivot before impact.
 *
 * Bands, plausible ranges and reading errors: common practice, no source. Camera sensitivities: derived by projection
 * geometry at a forward bend of 35 degrees (side tilt 0.7 per degree of yaw, roll one to one; lines seen end-on follow
 * the angle of the sideways offset one to one; a difference of two tilts keeps 0.12 of the yaw and none of the roll).
 */
export const CATALOGUE = [
  {
    id: "trail-v",
    ownName: null,
    unit: "pct-span",
    view: "face-on",
    checkpoint: "setup",
    phase: "before-swing",
    order: 10,
    mirrors: "same",
    derivedFrom: null,
    plausible: { low: -100, high: 250 },
    goals: everywhere(30, 80),
    readerSd: 5,
    cameraSdUnknown: 8,
    sensitivity: { yaw: 1.9, roll: 2.4, offset: 0 },
  },
  {
    id: "lead-v",
    ownName: null,
    unit: "pct-span",
    view: "face-on",
    checkpoint: "setup",
    phase: "before-swing",
    order: 20,
    mirrors: "same",
    derivedFrom: null,
    plausible: { low: -100, high: 250 },
    goals: everywhere(40, 100),
    readerSd: 5,
    cameraSdUnknown: 8,
    sensitivity: { yaw: 1.9, roll: 2.4, offset: 0 },
  },
  {
    id: "foot-line",
    ownName: null,
    unit: "deg",
    view: "down-the-line",
    checkpoint: "setup",
    phase: "before-swing",
    order: 30,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -40, high: 40 },
    goals: everywhere(-3, 4),
    readerSd: 1.5,
    cameraSdUnknown: 2.5,
    sensitivity: { yaw: 0, roll: 0, offset: 1 },
  },
  {
    id: "setup-tilt",
    ownName: null,
    unit: "deg",
    view: "face-on",
    checkpoint: "setup",
    phase: "before-swing",
    order: 40,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -30, high: 40 },
    goals: byClub(edges(3, 10), edges(3, 10), edges(4, 12), edges(4, 12), edges(5, 14)),
    readerSd: 1.5,
    cameraSdUnknown: 3,
    sensitivity: { yaw: 0.7, roll: 1, offset: 0 },
  },
  {
    id: "posture-bend",
    ownName: null,
    unit: "deg",
    view: "down-the-line",
    checkpoint: "setup",
    phase: "before-swing",
    order: 50,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: 0, high: 75 },
    goals: everywhere(30, 45),
    readerSd: 1.5,
    cameraSdUnknown: 1.5,
    sensitivity: { yaw: 0, roll: 1, offset: 0.1 },
  },
  {
    id: "ball-position",
    ownName: null,
    unit: "pct-stance",
    view: "face-on",
    checkpoint: "setup",
    phase: "before-swing",
    order: 60,
    mirrors: "same",
    derivedFrom: null,
    plausible: { low: -50, high: 170 },
    goals: byClub(edges(45, 60), edges(50, 65), edges(60, 80), edges(70, 90), edges(85, 100)),
    readerSd: 2,
    cameraSdUnknown: 3,
    sensitivity: { yaw: 0.7, roll: 0, offset: 0 },
  },
  {
    id: "shoulder-line",
    ownName: null,
    unit: "deg",
    view: "down-the-line",
    checkpoint: "setup",
    phase: "before-swing",
    order: 70,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -45, high: 45 },
    goals: everywhere(-4, 4),
    readerSd: 3,
    cameraSdUnknown: 3,
    sensitivity: { yaw: 0, roll: 0, offset: 1 },
  },
  {
    id: "hinge",
    ownName: null,
    unit: "deg",
    view: "face-on",
    checkpoint: "lead-arm-parallel",
    phase: "in-swing",
    order: 110,
    mirrors: "same",
    derivedFrom: null,
    plausible: { low: 0, high: 150 },
    goals: everywhere(85, 95),
    readerSd: 1.5,
    cameraSdUnknown: 3,
    sensitivity: { yaw: 0.7, roll: 0, offset: 0 },
  },
  {
    id: "shaft-line",
    ownName: null,
    unit: "deg",
    view: "down-the-line",
    checkpoint: "club-parallel",
    phase: "in-swing",
    order: 120,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -60, high: 60 },
    goals: everywhere(-5, 5),
    readerSd: 1.5,
    cameraSdUnknown: 3,
    sensitivity: { yaw: 0, roll: 0, offset: 1 },
  },
  {
    id: "hip-sway",
    ownName: null,
    unit: "pct-stance",
    view: "face-on",
    checkpoint: "top",
    phase: "in-swing",
    order: 130,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -60, high: 60 },
    goals: everywhere(-5, 8),
    readerSd: 1.5,
    cameraSdUnknown: 1.2,
    sensitivity: { yaw: 0.12, roll: 0.1, offset: 0 },
  },
  {
    id: "tilt-kept",
    ownName: null,
    unit: "deg",
    view: "face-on",
    checkpoint: "top",
    phase: "in-swing",
    order: 140,
    mirrors: "mirrors",
    derivedFrom: ["top-tilt", "setup-tilt"],
    plausible: { low: -40, high: 40 },
    goals: everywhere(-3, 8),
    readerSd: 2,
    cameraSdUnknown: 0.7,
    sensitivity: { yaw: 0.12, roll: 0, offset: 0 },
  },
  {
    id: "top-tilt",
    ownName: null,
    unit: "deg",
    view: "face-on",
    checkpoint: "top",
    phase: "in-swing",
    order: 150,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -40, high: 50 },
    goals: everywhere(2, null),
    readerSd: 1.5,
    cameraSdUnknown: 3,
    sensitivity: { yaw: 0.7, roll: 1, offset: 0 },
  },
  {
    id: "head-drift",
    ownName: null,
    unit: "pct-stance",
    view: "face-on",
    checkpoint: "top",
    phase: "in-swing",
    order: 160,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -60, high: 80 },
    goals: everywhere(-5, 15),
    readerSd: 1.5,
    cameraSdUnknown: 1.2,
    sensitivity: { yaw: 0.12, roll: 0.1, offset: 0 },
  },
  {
    id: "impact-tilt",
    ownName: null,
    unit: "deg",
    view: "face-on",
    checkpoint: "impact",
    phase: "impact",
    order: 210,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -30, high: 60 },
    goals: everywhere(8, 25),
    readerSd: 1.5,
    cameraSdUnknown: 3,
    sensitivity: { yaw: 0.7, roll: 1, offset: 0 },
  },
  {
    id: "hip-shift",
    ownName: null,
    unit: "pct-stance",
    view: "face-on",
    checkpoint: "impact",
    phase: "impact",
    order: 220,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -90, high: 60 },
    goals: everywhere(-25, -8),
    readerSd: 1.5,
    cameraSdUnknown: 1.2,
    sensitivity: { yaw: 0.12, roll: 0.1, offset: 0 },
  },
  {
    id: "shaft-lean",
    ownName: null,
    unit: "deg",
    view: "face-on",
    checkpoint: "impact",
    phase: "impact",
    order: 230,
    mirrors: "mirrors",
    derivedFrom: null,
    plausible: { low: -60, high: 60 },
    goals: byClub(edges(3, 12), edges(3, 12), edges(0, 8), edges(0, 8), edges(-3, 4)),
    readerSd: 2,
    cameraSdUnknown: 4,
    sensitivity: { yaw: 0.7, roll: 1, offset: 0 },
  },
] as const satisfies readonly FundamentalShape<string>[];

/** Id of a built-in fundamental. */
export type BuiltInId = (typeof CATALOGUE)[number]["id"];

type AnyFundamental = FundamentalShape<BuiltInId | OwnId>;

/** The built-in fundamentals as plain entries, in the order of work. */
export const BUILT_IN: readonly AnyFundamental[] = CATALOGUE;

/**
 * A fundamental by its id, among the built-in and the academy's own ones.
 *
 * @returns undefined when nobody knows the id
 */
export function findFundamental(id: string, own: readonly AnyFundamental[]): AnyFundamental | undefined {
  return BUILT_IN.find((entry) => entry.id === id) ?? own.find((entry) => entry.id === id);
}

/** All fundamentals of an academy in the order of work. */
export function orderedFundamentals(own: readonly AnyFundamental[]): readonly AnyFundamental[] {
  return [...BUILT_IN, ...own].sort((a, b) => a.order - b.order || a.id.localeCompare(b.id));
}

/** Whether a text is the id of a built-in fundamental. */
export function isBuiltInId(id: string): id is BuiltInId {
  return BUILT_IN.some((entry) => entry.id === id);
}
