import type { Spot } from "./phone-place";

/** A phone that stands upright and neither tips nor leans. */
export interface Lens {
  readonly at: Spot;
  /** The way it looks, radians: 0 toward the target, a quarter turn from there outward over the ball. */
  readonly heading: number;
}

/** A place in the picture in tangents of the angle from its middle: right and down are plus. */
export interface PictureSpot {
  readonly x: number;
  readonly y: number;
}

/**
 * Where a spot in the room lies in the picture, as a pinhole sees a right-handed golfer.
 *
 * @throws RangeError for a spot beside or behind the lens, which is in no picture
 *
 * Source: central projection; no lens bends straight lines here.
 */
export function pictureSpot(spot: Spot, lens: Lens): PictureSpot {
  const along = spot.along - lens.at.along;
  const out = spot.out - lens.at.out;
  const depth = along * Math.cos(lens.heading) + out * Math.sin(lens.heading);
  if (!(depth > 0)) throw new RangeError(`a spot ${depth} m in front of the lens`);
  const right = out * Math.cos(lens.heading) - along * Math.sin(lens.heading);
  return { x: right / depth, y: (lens.at.up - spot.up) / depth };
}
