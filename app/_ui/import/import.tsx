import type { ImportPage } from "@/lib/report/form-model";
import { PageHead, Part } from "../part/part";
import styles from "./import.module.css";
import { Mapping } from "./mapping";
import { Progress } from "./progress";
import { Questions } from "./questions";
import { Sheet } from "./sheet";
import { Upload } from "./upload";

type Preview = NonNullable<ImportPage["preview"]>;

/** Lines of one kind; `from` numbers them on, as the marked cells of the sheet do. */
function Lines({ part, from }: { readonly part: NonNullable<Preview["issues"]>; readonly from?: number }) {
  return (
    <Part margin={part.margin}>
      <h2>{part.heading}</h2>
      <ul className={styles.lines}>
        {part.items.map((item, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines of a finished preview never move.
          <li key={at}>
            {from === undefined ? null : <span className={styles.number}>{from + at} </span>}
            {item}
          </li>
        ))}
      </ul>
      {part.more === "" ? null : <p>{part.more}</p>}
    </Part>
  );
}

function PreviewForm({
  preview,
  action,
}: {
  readonly preview: Preview;
  readonly action: (data: FormData) => Promise<void>;
}) {
  const { saved } = preview;
  const asked = preview.questions?.items.length ?? 0;
  return (
    <form action={action}>
      <input type="hidden" name="draftId" value={preview.draftId} />
      {preview.source === null ? null : (
        <Part margin={preview.source.margin}>
          <p>{preview.source.text}</p>
          <input type="hidden" name="source" value={preview.source.fingerprint} />
        </Part>
      )}
      <Sheet sheet={preview.columns} />
      {preview.mapping === null ? null : <Mapping mapping={preview.mapping} forget={preview.source?.forget ?? null} />}
      {preview.questions === null ? null : <Questions questions={preview.questions} />}
      {preview.issues === null ? null : <Lines part={preview.issues} from={asked + 1} />}
      {preview.notes === null ? null : <Lines part={preview.notes} />}
      <Part margin={saved.margin}>
        <h2>{saved.heading}</h2>
        <p>{saved.fates}</p>
        <ul>
          {saved.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <p className={styles.actions}>
          {saved.submit === null ? null : (
            <button type="submit" className="do" name="intent" value="import">
              {saved.submit}
            </button>
          )}
          {saved.rejected === null ? null : <a href={saved.rejected.href}>{saved.rejected.label}</a>}
          {saved.all === null ? null : <a href={saved.all.href}>{saved.all.label}</a>}
          <button type="submit" className="say" name="intent" value="drop">
            {saved.drop}
          </button>
        </p>
      </Part>
    </form>
  );
}

/** The import: choose a file, see what it says and would change, confirm, and what was written. */
export function Import({
  model,
  action,
}: {
  readonly model: ImportPage;
  readonly action?: (data: FormData) => Promise<void>;
}) {
  return (
    <>
      <PageHead title={model.title} lede={model.lede} />
      {model.upload === null ? null : <Upload upload={model.upload} />}
      {model.preview === null || !action ? null : <PreviewForm preview={model.preview} action={action} />}
      {model.progress === null || !action ? null : (
        <Part margin={model.progress.margin}>
          <Progress progress={model.progress} action={action} />
        </Part>
      )}
      {model.done === null ? null : (
        <Part margin={model.done.heading}>
          {model.done.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
          <p className={styles.actions}>
            {model.done.links.map((link) => (
              <a key={link.href} href={link.href}>
                {link.label}
              </a>
            ))}
          </p>
        </Part>
      )}
    </>
  );
}
