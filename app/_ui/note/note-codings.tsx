import type { NoteCodingsPage } from "@/lib/report/build-note-codings";
import type { FormAction } from "../form/form";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";

/** The phrases that an academy corrected, each to be taken back, and what was ever said of them. */
export function NoteCodings({ model, action }: { readonly model: NoteCodingsPage; readonly action: FormAction }) {
  const buttons = model.takeBacks.map(({ phrase, label }) => (
    <form key={phrase} action={action} method={typeof action === "string" ? "post" : undefined}>
      <input type="hidden" name="phrase" value={phrase} />
      <button type="submit" className="say">
        {label}
      </button>
    </form>
  ));
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      <Part margin={model.margin}>
        {model.none === "" ? (
          <Table model={model.table} drawn={{ label: model.changeLabel, cells: buttons }} />
        ) : (
          <p>{model.none}</p>
        )}
      </Part>
      {model.history === null ? null : (
        <Part margin={model.history.margin}>
          <Table model={model.history.table} />
        </Part>
      )}
    </>
  );
}
