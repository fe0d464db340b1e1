import type { CellSums } from "./cell-sums";
import { filteredSums } from "./innovation-filter";
import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";
import { persistentSums } from "./persistence-filter";
import { whitenedSums } from "./whitened-sums";

/**
 * Fills `sums` for one cell by the cheapest of the three ways that applies: the filter of one state, that of two where
 * the shared error persists, the Cholesky factor where groups are tied. All three give the same numbers.
 *
 * `sums`: room for `look.count` groups. The unit is that of the look's values.
 */
export function fillCellSums(look: LookData, cell: NuisanceCell, sums: CellSums): void {
  if (look.ties !== null) whitenedSums(look, cell, sums);
  else if (cell.errorPersistence > 0) persistentSums(look, cell, sums);
  else filteredSums(look, cell, sums);
}
