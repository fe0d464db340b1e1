import type { ChooseGroupPage } from "@/lib/report/group-page-model";
import form from "../form/form.module.css";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import styles from "./choose-group.module.css";

/** Who was filmed in a group, what is read of them, and how many swings each; the choice stands in the address. */
export function ChooseGroup({ model }: { readonly model: ChooseGroupPage }) {
  const { clubGroup, swings } = model;
  return (
    <form method="get" action="/record/group">
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.error === "" ? null : (
          <p role="alert" className={form.error}>
            {model.error}
          </p>
        )}
      </PageHead>
      <Part margin={model.margin} explains={model.explains}>
        {model.lists.map((list) => (
          <fieldset key={list.name} className={`${form.choices} ${styles.list}`}>
            <legend>{list.legend}</legend>
            <div className={styles.boxes}>
              {list.options.map((option) => (
                <label key={option.value} className={form.choice}>
                  <input
                    type="checkbox"
                    name={list.name}
                    value={option.value}
                    defaultChecked={option.ticked === "yes"}
                  />
                  {option.label}
                </label>
              ))}
            </div>
          </fieldset>
        ))}
        <div className={`${form.field} ${styles.swings}`}>
          <label htmlFor="group">{clubGroup.label}</label>
          <select id="group" name="group" defaultValue={clubGroup.value}>
            {clubGroup.options.map((option) => (
              <option key={option.value} value={option.value}>
                {option.label}
              </option>
            ))}
          </select>
        </div>
        <div className={`${form.field} ${styles.swings}`}>
          <label htmlFor="swings">{swings.label}</label>
          <select id="swings" name="swings" defaultValue={swings.value}>
            {swings.options.map((option) => (
              <option key={option} value={option}>
                {option}
              </option>
            ))}
          </select>
        </div>
        <p className={styles.submit}>
          <button type="submit" className="do">
            {model.submit}
          </button>
        </p>
      </Part>
    </form>
  );
}
