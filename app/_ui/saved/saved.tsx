import Link from "next/link";
import type { SavedPage } from "@/lib/report/saved-model";
import { Verdict } from "../glyph/glyph";
import { LinkRow } from "../link-row/link-row";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import styles from "./saved.module.css";

/** What a session that was saved has changed, the most important first; then what to look at again, and where to go on. */
export function Saved({ model }: { readonly model: SavedPage }) {
  const { changed, check, next } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      <Part margin={changed.margin}>
        <h2>{changed.heading}</h2>
        {changed.lines.length === 0 ? null : (
          <ul className={styles.lines}>
            {changed.lines.map((line) => (
              <li key={line.href}>
                <Link prefetch={false} href={line.href}>
                  <Verdict glyph={line.glyph} word={line.name} size={16} />
                </Link>
                <span>{line.text}</span>
              </li>
            ))}
          </ul>
        )}
        {changed.unchanged === "" ? null : <p className={styles.same}>{changed.unchanged}</p>}
      </Part>
      {check === null ? null : (
        <Part margin={check.margin}>
          <h2>{check.heading}</h2>
          <ul>
            {check.items.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
          <p>{check.explains}</p>
          <p>
            <Link prefetch={false} href={check.link.href}>
              {check.link.label}
            </Link>
          </p>
        </Part>
      )}
      <Part margin={next.margin}>
        <h2>{next.heading}</h2>
        <LinkRow links={next.links} />
      </Part>
    </>
  );
}
