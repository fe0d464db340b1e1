import Link from "next/link";
import type { Link as LinkModel } from "@/lib/report/page-model";
import styles from "./refusal.module.css";

/** A page that isn't there: what happened and the way on. */
export function Refusal(props: {
  readonly title: string;
  readonly happened: string;
  readonly way: LinkModel;
  /** Under which the log has a line about it. */
  readonly reference: string;
}) {
  return (
    <main className={styles.refusal}>
      <h1>{props.title}</h1>
      <p>{props.happened}</p>
      <p>
        <Link prefetch={false} href={props.way.href}>
          {props.way.label}
        </Link>
      </p>
      <p>{props.reference}</p>
    </main>
  );
}
