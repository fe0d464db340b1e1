import type { ReactNode } from "react";
import type { FormModel } from "@/lib/report/form-model";
import { type AskCaptures, CaptureAnswer } from "../capture/capture-answer";
import { KeptForm } from "../keep/kept-form";
import { type AskNote, NoteAnswer } from "../note/note-answer";
import { PageHead, Part } from "../part/part";
import { Field } from "./field";
import styles from "./form.module.css";
import { Grid, type GridActions } from "./grid";
import { HiddenFields } from "./hidden-fields";
import { Problems } from "./problems";
import { Refresh } from "./refresh";

/** What a form is sent to: a path, or a function on the server. */
export type FormAction = string | ((data: FormData) => Promise<void>);

/** Fields and cells of a form in which something may have to be mended. */
function mendable(model: FormModel) {
  const fields = model.parts.flatMap((part) => [...part.fields, ...(part.more?.fields ?? [])]);
  const grids = [model.grid, ...model.parts.map((part) => part.grid ?? null)];
  return [...fields, ...grids.flatMap((grid) => grid?.rows.flatMap((row) => row.cells) ?? [])];
}

/** A form of a button alone: one more part of its page. */
function Press({ model, action }: { readonly model: FormModel; readonly action: FormAction }) {
  return (
    <form action={action} method={typeof action === "string" ? "post" : undefined}>
      <Part margin={model.heading}>
        <p>{model.explains}</p>
        <HiddenFields fields={model.hidden} />
        <p>
          <button type="submit" className="do">
            {model.submit}
          </button>
        </p>
      </Part>
    </form>
  );
}

/** What asks the server what the films of a form can show: at each change, and by a button where no script runs. */
export interface FilmActions {
  readonly ask: AskCaptures;
  readonly show: (data: FormData) => Promise<void>;
}

/** The same for what the notes among a form's fields say, each of its student. */
export interface NoteActions {
  readonly ask: (studentId: string, data: FormData) => ReturnType<AskNote>;
  readonly show: (studentId: string, data: FormData) => Promise<void>;
}

type FormPart = FormModel["parts"][number];

function Fields({ fields }: { readonly fields: FormPart["fields"] }) {
  return (
    <div className={styles.fields}>
      {fields.map((field) => (
        <Field key={field.name} field={field} />
      ))}
    </div>
  );
}

/** Fields that are one step away, and open where one of them was filled in or is wrong. */
function More({ more }: { readonly more: NonNullable<FormPart["more"]> }) {
  const open = more.open === "yes" || more.fields.some((field) => field.error !== "");
  return (
    <details className={styles.more} open={open}>
      <summary>{more.summary}</summary>
      <Fields fields={more.fields} />
    </details>
  );
}

function Films({
  part,
  films,
  check,
}: {
  readonly part: FormPart;
  readonly films: FilmActions;
  readonly check: string;
}) {
  return part.answer ? (
    <>
      <CaptureAnswer first={part.answer} ask={films.ask} />
      <noscript>
        <button type="submit" formAction={films.show} className="quiet">
          {check}
        </button>
      </noscript>
    </>
  ) : null;
}

function Notes(props: { readonly part: FormPart; readonly notes: NoteActions; readonly check: string }) {
  const { part, notes, check } = props;
  return part.note ? (
    <div id={`note-${part.note.whose}`}>
      <NoteAnswer first={part.note} ask={notes.ask.bind(null, part.note.whose)} />
      <noscript>
        <button type="submit" formAction={notes.show.bind(null, part.note.whose)} className="say">
          {check}
        </button>
      </noscript>
    </div>
  ) : null;
}

/** A form that works without scripts; what was typed and what is wrong come back with the page. */
export function Form({
  model,
  action,
  films,
  notes,
  grid,
  refresh,
  before,
}: {
  readonly model: FormModel;
  readonly action: FormAction;
  readonly films?: FilmActions;
  readonly notes?: NoteActions;
  readonly grid?: GridActions;
  /** Keeps the form as it stands and makes it anew from what it says. */
  readonly refresh?: (data: FormData) => Promise<void>;
  /** Stands above the title. */
  readonly before?: ReactNode;
}) {
  if (model.parts.length === 0 && model.grid === null) return <Press model={model} action={action} />;
  const head = (
    <PageHead title={model.heading} lede={model.explains} before={before}>
      {model.refusal === "" ? null : <Problems refusal={model.refusal} fields={mendable(model)} />}
    </PageHead>
  );
  return (
    <KeptForm keep={model.keep} hidden={model.hidden} action={action} head={head}>
      {model.parts.map((part) => (
        <Part key={part.margin} margin={part.margin} explains={part.explains}>
          {part.grid ? <Grid model={part.grid} /> : null}
          <Fields fields={part.fields} />
          {part.refresh && refresh ? (
            <p>
              <Refresh label={part.refresh} action={refresh} />
              <noscript>
                <button type="submit" formAction={refresh} className="say">
                  {part.refresh}
                </button>
              </noscript>
            </p>
          ) : null}
          {part.more ? <More more={part.more} /> : null}
          {films ? <Films part={part} films={films} check={model.check ?? ""} /> : null}
          {notes ? <Notes part={part} notes={notes} check={model.noteCheck ?? ""} /> : null}
        </Part>
      ))}
      {model.grid === null ? null : (
        <Part margin={model.grid.margin} explains={model.grid.explains}>
          <Grid model={model.grid} actions={grid} />
        </Part>
      )}
      <div className={styles.submit}>
        <button type="submit" className="do">
          {model.submit}
        </button>
      </div>
    </KeptForm>
  );
}
