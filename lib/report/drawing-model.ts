/** A point of a drawing in its own unit: x to the right, y down. */
export interface DrawnPoint {
  readonly x: number;
  readonly y: number;
}

/** What a line stands for; how thick and of which colour it is belongs to the page. */
export type LineRole =
  | "ground"
  | "aim"
  | "aim-head"
  | "sight"
  | "shunned"
  | "distance"
  | "limb"
  | "shoulders"
  | "foot"
  | "club"
  | "stick"
  | "stick-told"
  | "stand"
  | "phone"
  | "leader"
  | "told"
  | "plus"
  | "plus-head";

/** A line through its points. */
export interface DrawnLine {
  readonly role: LineRole;
  readonly points: readonly DrawnPoint[];
}

/** A round thing about its middle. */
export interface DrawnRound {
  readonly role: "head" | "ball" | "told";
  readonly at: DrawnPoint;
  readonly radius: number;
}

/** Finished words at a point; lines of one label stand under each other. */
export interface DrawnLabel {
  readonly role: "name" | "strong" | "distance";
  readonly at: DrawnPoint;
  readonly anchor: "start" | "middle" | "end";
  readonly lines: readonly string[];
}

/** A plain line drawing, to be drawn from first to last. */
export interface Drawing {
  /** What it shows, and the same in words for whoever can't see it. */
  readonly title: string;
  readonly description: string;
  /** Edges in the drawing's unit: metres of a view from above or aside, tangents of a picture. */
  readonly frame: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  /** Pixels a unit at which labels of the page's text size fit. */
  readonly scale: number;
  readonly lines: readonly DrawnLine[];
  readonly rounds: readonly DrawnRound[];
  readonly labels: readonly DrawnLabel[];
}
