import type { GridModel } from "@/lib/report/grid-model";
import { LineDrawing } from "../filming/line-drawing";
import { GridDesk } from "../grid/grid-desk";

/** What keeps how a viewer likes the grid: as one chooses, and by a button where no script runs. */
export interface GridActions {
  readonly keep: (data: FormData) => Promise<void>;
  readonly turn: (data: FormData) => Promise<void>;
}

/**
 * The grid of readings; its drawings are made here, on the server. The line that says where one is shows them once more
 * where the grid is the page's only one.
 */
export function Grid({ model, actions }: { readonly model: GridModel; readonly actions?: GridActions }) {
  const drawn = () =>
    Object.fromEntries(
      model.columns.map(({ fundamentalId, drawing }) => [
        fundamentalId,
        <LineDrawing key={fundamentalId} drawing={drawing} size="sign" />,
      ]),
    );
  return (
    <>
      {actions ? (
        <noscript>
          <button type="submit" formAction={actions.turn} className="say">
            {model.words.turn}
          </button>
        </noscript>
      ) : null}
      <GridDesk
        model={{ ...model, columns: model.columns.map(({ drawing: _drawn, ...column }) => column) }}
        heads={drawn()}
        aside={actions ? drawn() : {}}
        keep={actions?.keep}
      />
    </>
  );
}
