/** One caption of the story lane: where it would like to start, and the latest start that still points at its mark. */
export interface LaneItem {
  readonly ideal: number;
  readonly latest: number;
  readonly width: number;
}

/** Where a caption stands: its start in pixels and its row, 0 on top. */
export interface LanePlace {
  readonly start: number;
  readonly row: number;
}

/** Sets captions from left to right, sliding each as far as it may, and opens a new row where there is no room. */
export function placeInLane(
  items: readonly LaneItem[],
  from: number,
  to: number,
  gap: number,
): { readonly places: readonly LanePlace[]; readonly rows: number } {
  const ends: number[] = [];
  const places = items.map((item): LanePlace => {
    const last = Math.max(from, to - item.width);
    const ideal = Math.min(Math.max(item.ideal, from), last);
    const latest = Math.min(Math.max(item.latest, ideal), last);
    const free = ends.findIndex((end) => end + gap <= latest);
    const row = free < 0 ? ends.length : free;
    const end = ends[row];
    const start = end === undefined ? ideal : Math.max(ideal, end + gap);
    ends[row] = start + item.width;
    return { start, row };
  });
  return { places, rows: ends.length };
}
