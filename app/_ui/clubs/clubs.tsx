import Link from "next/link";
import type { ClubsPage } from "@/lib/report/build-clubs";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./clubs.module.css";

/** An academy's club groups, what can be changed of them, and what was changed. */
export function Clubs({ model }: { readonly model: ClubsPage }) {
  const { groups, history } = model;
  const changes = groups.changes.map((links) => (
    <span key={links[0]?.href} className={styles.changes}>
      {links.map((link) => (
        <Link prefetch={false} key={link.href} href={link.href}>
          {link.label}
        </Link>
      ))}
    </span>
  ));
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      <Part margin={groups.margin} explains={groups.explains}>
        <h2>{groups.heading}</h2>
        {groups.fixed === "" ? null : <p>{groups.fixed}</p>}
        <Table
          model={groups.table}
          drawn={changes.length === 0 ? undefined : { label: groups.changeLabel, cells: changes }}
        />
        {groups.links.map((link) => (
          <p key={link.href}>
            <Link prefetch={false} className="do" href={link.href}>
              {link.label}
            </Link>
          </p>
        ))}
      </Part>
      {history === null ? null : (
        <Part margin={history.margin}>
          <h2>{history.heading}</h2>
          <Table model={history.table} />
        </Part>
      )}
    </>
  );
}
