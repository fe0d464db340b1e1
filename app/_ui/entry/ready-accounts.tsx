import type { ReadyAccounts as Model } from "@/lib/report/entry-model";
import { HiddenFields } from "../form/hidden-fields";
import { Part } from "../part/part";
import styles from "./entry.module.css";

/** The demo's accounts: each opens by one press. */
export function ReadyAccounts({ model }: { readonly model: Model }) {
  return (
    <Part margin={model.margin} explains={model.explains}>
      <ul className={styles.ready}>
        {model.accounts.map((account) => (
          <li key={account.name}>
            <form action="/api/sign-in" method="post">
              <HiddenFields fields={account.hidden} />
              <button type="submit" className="do">
                {account.submit}
              </button>
              <p>{account.explains}</p>
            </form>
          </li>
        ))}
      </ul>
    </Part>
  );
}
