import type { Link } from "./basic-model";
import type { Drawing } from "./drawing-model";

/** Ways to show the card, the one in force marked. */
export interface CardChoice {
  readonly label: string;
  readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
}

/** A drawing with the words under it: a strong one first, where there is one. */
export interface CardFigure {
  readonly drawing: Drawing;
  readonly lead: string;
  readonly caption: string;
}

/** The card that says where the phone stands, for one view and one hand, to print and to show on a phone. */
export interface FilmingCard {
  /** In which language it is read. */
  readonly lang: string;
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  /** In which language the way back is, which belongs to the page about it. */
  readonly backLang: string;
  readonly choices: readonly CardChoice[];
  readonly place: {
    readonly margin: string;
    readonly heading: string;
    readonly plan: CardFigure;
    readonly steps: readonly string[];
    readonly side: CardFigure;
  };
  readonly picture: {
    readonly margin: string;
    readonly heading: string;
    /** As it should look, and as it looks from beside the right place. */
    readonly figures: readonly CardFigure[];
    readonly notes: readonly string[];
  };
  readonly checks: {
    readonly margin: string;
    readonly heading: string;
    readonly items: readonly string[];
    readonly otherwise: string;
  };
  readonly care: { readonly margin: string; readonly heading: string; readonly items: readonly string[] };
}
