import Link from "next/link";
import type { ReactNode } from "react";
import type { HappenPage as HappenPageModel, HappenPart } from "@/lib/report/happen-model";
import { Facts } from "../facts/facts";
import type { FormAction } from "../form/form";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./happen.module.css";

/** What stands in a table's last column: a way on, or a button. */
function lastColumn(part: HappenPart, press: FormAction | undefined) {
  if (part.open !== null)
    return {
      label: part.open.label,
      cells: part.open.links.map((link) => (
        <Link prefetch={false} key={link.href} className={styles.open} href={link.href}>
          {link.label}
        </Link>
      )),
    };
  if (!part.press || press === undefined) return undefined;
  return {
    label: part.press.label,
    cells: part.press.buttons.map((button) =>
      button === null ? null : (
        <form
          key={JSON.stringify(button.hidden)}
          className={styles.form}
          action={press}
          method={typeof press === "string" ? "post" : undefined}
        >
          {Object.entries(button.hidden).map(([name, value]) => (
            <input key={name} type="hidden" name={name} value={value} />
          ))}
          <button type="submit" className="say">
            {button.label}
          </button>
        </form>
      ),
    ),
  };
}

function One({ part, press }: { readonly part: HappenPart; readonly press: FormAction | undefined }) {
  return (
    <Part margin={part.margin} explains={part.explains}>
      <h2>{part.heading}</h2>
      {part.paragraphs.map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      {part.facts.length === 0 ? null : <Facts facts={part.facts} arrangement="wide" />}
      {part.table === null ? null : <Table model={part.table} drawn={lastColumn(part, press)} />}
    </Part>
  );
}

/** A page about what happened or was practised; forms stand beneath its parts, cautions at its foot. */
export function HappenPage(props: {
  readonly model: HappenPageModel;
  /** Stands between head and parts. */
  readonly before?: ReactNode;
  /** What the buttons of tables are sent to. */
  readonly press?: FormAction;
  readonly children?: ReactNode;
}) {
  const { model } = props;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.actions.length === 0 ? null : (
          <p className={styles.actions}>
            {model.actions.map((action) => (
              <Link prefetch={false} key={action.href} href={action.href}>
                {action.label}
              </Link>
            ))}
          </p>
        )}
      </PageHead>
      {props.before}
      {model.parts.map((part) => (
        <One key={part.margin} part={part} press={props.press} />
      ))}
      {props.children}
      {model.cautions.map((caution) => (
        <p key={caution} className={styles.caution}>
          {caution}
        </p>
      ))}
    </>
  );
}
