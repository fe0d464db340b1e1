import type { ChartFiles } from "@/lib/report/basic-model";
import { SavePicture } from "./save-picture";
import styles from "./save-picture.module.css";

/** The ways out of a chart: as a drawing, in colour or in one, and as a picture where scripts run. */
export function SaveChart({ files }: { readonly files: ChartFiles }) {
  return (
    <p className={styles.files}>
      {files.links.map((link) => (
        <a key={link.href} href={link.href}>
          {link.label}
        </a>
      ))}
      <SavePicture {...files.picture} />
    </p>
  );
}
