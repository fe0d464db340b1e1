import type { ImportPage } from "@/lib/report/form-model";
import { Part } from "../part/part";
import styles from "./import.module.css";

/** The choice of a file; it posts without scripts. */
export function Upload({ upload }: { readonly upload: NonNullable<ImportPage["upload"]> }) {
  return (
    <>
      <Part margin={upload.fileLabel}>
        <form action={upload.action} method="post" encType="multipart/form-data" className={styles.upload}>
          <label htmlFor="import-file">{upload.fileLabel}</label>
          <input
            id="import-file"
            type="file"
            name="file"
            accept=".csv,.txt,.tsv,.json,.xlsx,.zip,text/csv"
            aria-describedby={upload.error === "" ? "import-hint" : "import-error import-hint"}
            aria-invalid={upload.error === "" ? undefined : true}
          />
          <p id="import-hint">{upload.hint}</p>
          {upload.error === "" ? null : (
            <p id="import-error" role="alert" className={styles.error}>
              {upload.error}
            </p>
          )}
          <button type="submit" className="do">
            {upload.submit}
          </button>
        </form>
      </Part>
      <Part margin={upload.paste.label}>
        <form action={upload.action} method="post" encType="multipart/form-data" className={styles.upload}>
          <label htmlFor="import-paste">{upload.paste.label}</label>
          <textarea id="import-paste" name="paste" rows={6} required aria-describedby="import-paste-hint" />
          <p id="import-paste-hint">{upload.paste.hint}</p>
          <button type="submit" className="do">
            {upload.paste.submit}
          </button>
        </form>
      </Part>
      <Part margin={upload.format.heading}>
        <ul className={styles.lines}>
          {upload.format.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Part>
      <Part margin={upload.samples.heading}>
        <ul>
          {upload.samples.links.map((link) => (
            <li key={link.href}>
              <a className={styles.sample} href={link.href}>
                {link.label}
              </a>
            </li>
          ))}
        </ul>
      </Part>
    </>
  );
}
