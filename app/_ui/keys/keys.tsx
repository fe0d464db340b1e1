import Link from "next/link";
import type { KeysPage } from "@/lib/report/key-model";
import { KeptForm } from "../keep/kept-form";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Table } from "../table/table";
import styles from "./keys.module.css";

type Action = (data: FormData) => Promise<void>;

function Shown({ shown }: { readonly shown: NonNullable<KeysPage["shown"]> }) {
  return (
    <Part margin={shown.label}>
      <h2>{shown.heading}</h2>
      <p>
        <code className={styles.key}>{shown.key}</code>
      </p>
      <p>{shown.text}</p>
      <p>
        <Link prefetch={false} href={shown.done.href}>
          {shown.done.label}
        </Link>
      </p>
    </Part>
  );
}

function Make({ make, action }: { readonly make: KeysPage["make"]; readonly action: Action }) {
  return (
    <KeptForm keep={make.keep} hidden={make.hidden} action={action}>
      <Part margin={make.margin}>
        <h2>{make.heading}</h2>
        <div className={styles.make}>
          <label htmlFor="key-name">{make.label}</label>
          <input
            id="key-name"
            name="name"
            defaultValue={make.value}
            maxLength={60}
            autoComplete="off"
            aria-describedby={make.error === "" ? "key-hint" : "key-error key-hint"}
            aria-invalid={make.error === "" ? undefined : true}
          />
          <p id="key-hint">{make.hint}</p>
          {make.error === "" ? null : (
            <p id="key-error" role="alert" className={styles.error}>
              {make.error}
            </p>
          )}
          <button type="submit" className="do">
            {make.submit}
          </button>
        </div>
      </Part>
    </KeptForm>
  );
}

/** Keys by which other programs may import: one just made, all of them, and a new one. */
export function Keys({
  model,
  make,
  revoke,
}: {
  readonly model: KeysPage;
  readonly make: Action;
  readonly revoke: Action;
}) {
  const cells = model.revokes.map((each) =>
    each === null ? null : (
      <form key={each.id} action={revoke}>
        <input type="hidden" name="id" value={each.id} />
        <button type="submit" className="say" aria-label={each.says}>
          {model.revokeLabel}
        </button>
      </form>
    ),
  );
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />} />
      {model.shown === null ? null : <Shown shown={model.shown} />}
      <Part margin={model.margin}>
        {model.table === null ? (
          <p>{model.empty}</p>
        ) : (
          <Table model={model.table} drawn={{ label: model.revokeLabel, cells }} />
        )}
      </Part>
      <Make make={model.make} action={make} />
    </>
  );
}
