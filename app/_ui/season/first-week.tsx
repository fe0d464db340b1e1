import Link from "next/link";
import type { FirstWeekPart } from "@/lib/report/season-model";
import { Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./season.module.css";

/** The first films of a student: what is missing, and what they could prove. */
export function FirstWeek({ model }: { readonly model: FirstWeekPart }) {
  return (
    <Part margin={model.margin}>
      <h2>{model.heading}</h2>
      {model.texts.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <p className={styles.actions}>
        <Link prefetch={false} className="do" href={model.action.href}>
          {model.action.label}
        </Link>
      </p>
      {model.table === null ? null : <Table model={model.table} />}
    </Part>
  );
}
