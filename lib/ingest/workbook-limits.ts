/** Limits of a workbook: what lies beyond is refused in words before anything is unpacked. */

/** Parts of one archive. A workbook of a season has about ten; every sheet adds one. */
export const PART_LIMIT = 1000;

/** Unpacked size of all parts that are read, in bytes: 100,000 rows of eight cells take about 40 MB. */
export const UNPACKED_LIMIT = 96 * 1024 * 1024;

/** Unpacked over packed size of one part. Sheets of equal rows reach about 60; deflate's own limit is 1,032. */
export const RATIO_LIMIT = 200;

/** Parts smaller than this are read whatever their ratio, in bytes: they can't fill a memory. */
export const RATIO_FROM = 4 * 1024 * 1024;

/** Sheets that are offered. */
export const SHEET_LIMIT = 200;

/** Cells of the rectangle that a sheet spans, blank ones too: a reader keeps each of them. */
export const SPAN_LIMIT = 4_000_000;

/** Rows that a sheet may span, blank ones between too; the rows of a file have their own, smaller limit. */
export const SPAN_ROWS = 200_000;
