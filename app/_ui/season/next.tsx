import Link from "next/link";
import type { NextPart } from "@/lib/report/season-model";
import { Facts } from "../facts/facts";
import { Fold } from "../part/fold";
import { Part } from "../part/part";
import styles from "./season.module.css";

/** The one next thing: why, what comes before it, what would alter it, and one button. */
export function Next({ next }: { readonly next: NextPart }) {
  return (
    <Part margin={next.margin}>
      <h2>{next.heading}</h2>
      {next.cautions.map((caution) => (
        <p key={caution}>
          <strong>{caution}</strong>
        </p>
      ))}
      <p>{next.text}</p>
      {next.facts.length === 0 ? null : <Facts facts={next.facts} />}
      {next.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {next.alters === null ? null : (
        <Fold label={next.alters.heading}>
          {next.beside.map((text) => (
            <p key={text}>{text}</p>
          ))}
          <h3 className={styles.unfolded}>{next.alters.heading}</h3>
          <ul>
            {next.alters.items.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </Fold>
      )}
      {next.action === null && next.links.length === 0 ? null : (
        <p className={styles.actions}>
          {next.action === null ? null : (
            <Link prefetch={false} className="do" href={next.action.href}>
              {next.action.label}
            </Link>
          )}
          {next.links.map((link) => (
            <Link prefetch={false} key={link.href} href={link.href}>
              {link.label}
            </Link>
          ))}
        </p>
      )}
    </Part>
  );
}
