import type { CardFigure, FilmingCard as FilmingCardModel } from "@/lib/report/filming-model";
import { Choices } from "../choices/choices";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import styles from "./filming-card.module.css";
import { LineDrawing } from "./line-drawing";

function Figure({ figure, size }: { readonly figure: CardFigure; readonly size: "plan" | "side" | "picture" }) {
  return (
    <figure className={styles.figure}>
      <LineDrawing drawing={figure.drawing} size={size} />
      <figcaption>
        {figure.lead === "" ? null : <strong>{figure.lead}</strong>} {figure.caption}
      </figcaption>
    </figure>
  );
}

/** Where the phone stands for one view and hand: one sheet of paper, or a phone's screen to scroll. */
export function FilmingCard({ model }: { readonly model: FilmingCardModel }) {
  const { place, picture, checks, care } = model;
  return (
    <div className={styles.card} lang={model.lang}>
      <PageHead
        title={model.title}
        lede={model.lede}
        before={
          <span lang={model.backLang}>
            <BackLink link={model.back} />
          </span>
        }
      >
        <div className={styles.choices}>
          {model.choices.map((choice) => (
            <Choices key={choice.label} {...choice} />
          ))}
        </div>
      </PageHead>
      <div className={styles.sheet}>
        <Part margin={place.margin}>
          <h2>{place.heading}</h2>
          <div className={styles.place}>
            <Figure figure={place.plan} size="plan" />
            <div className={styles.words}>
              <ol className={styles.steps}>
                {place.steps.map((step) => (
                  <li key={step}>{step}</li>
                ))}
              </ol>
              <Figure figure={place.side} size="side" />
            </div>
          </div>
        </Part>
        <div>
          <Part margin={picture.margin}>
            <h2>{picture.heading}</h2>
            <div className={styles.picture}>
              <div className={styles.pictures}>
                {picture.figures.map((figure) => (
                  <Figure key={figure.caption} figure={figure} size="picture" />
                ))}
              </div>
              <ul className={styles.notes}>
                {picture.notes.map((note) => (
                  <li key={note}>{note}</li>
                ))}
              </ul>
            </div>
          </Part>
          <Part margin={checks.margin}>
            <h2>{checks.heading}</h2>
            <ul className={styles.checks}>
              {checks.items.map((item) => (
                <li key={item}>
                  <label>
                    <input type="checkbox" />
                    {item}
                  </label>
                </li>
              ))}
            </ul>
            <p>{checks.otherwise}</p>
          </Part>
          <Part margin={care.margin}>
            <h2>{care.heading}</h2>
            <ul className={styles.notes}>
              {care.items.map((item) => (
                <li key={item}>{item}</li>
              ))}
            </ul>
          </Part>
        </div>
      </div>
    </div>
  );
}
