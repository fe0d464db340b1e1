/**
 * Sd of what the choice of the nearest picture leaves of an angle that moves, degrees.
 *
 * `degreesPerSecond`: how fast it moves; `framesPerSecond`: more than 0. The moment wanted lies anywhere within half a
 * picture either way: T / sqrt 12. Each swing has its own: it counts with the reading, not with the camera.
 *
 * Source: sd of an even distribution.
 */
export function timingSd(degreesPerSecond: number, framesPerSecond: number): number {
  if (!(framesPerSecond > 0)) throw new RangeError(`a film has more than 0 pictures a second, got ${framesPerSecond}`);
  return Math.abs(degreesPerSecond) / framesPerSecond / Math.sqrt(12);
}

/** Degrees over which a line is smeared while the shutter is open for one part in `shutterPerSecond` of a second. */
export function blurDegrees(degreesPerSecond: number, shutterPerSecond: number): number {
  if (!(shutterPerSecond > 0))
    throw new RangeError(`a shutter opens for 1 part in more than 0, got ${shutterPerSecond}`);
  return Math.abs(degreesPerSecond) / shutterPerSecond;
}
