/** What a mark shows; the word beside it says the same. `moved` is a proved move that is neither better nor worse. */
export type Glyph = "gain" | "slip" | "steady" | "open" | "moved";

/** A link with its words. */
export interface Link {
  readonly href: string;
  readonly label: string;
}

/** One fact: its name and its value, both finished. */
export interface Fact {
  readonly name: string;
  readonly value: string;
  /** A quiet second line; empty: none. */
  readonly note: string;
}

/** A table with finished cells. */
export interface TableModel {
  readonly caption: string;
  readonly columns: readonly { readonly label: string; readonly align: "start" | "end" }[];
  /** `quiet` rows are set aside. Where a row leads to a page of its own, its first cell does. */
  readonly rows: readonly {
    readonly cells: readonly string[];
    readonly tone: "plain" | "quiet";
    readonly href?: string;
    /** Where single cells lead, one each; null: nowhere. The first cell's way is `href`. */
    readonly ways?: readonly (string | null)[];
  }[];
  /** The table as a file; absent: it has none, or another one beside it. */
  readonly download?: Link;
}

/** A chart as files: drawings of this server, and a picture that the browser draws from the one at its address. */
export interface ChartFiles {
  readonly links: readonly Link[];
  readonly picture: {
    readonly href: string;
    readonly fileName: string;
    readonly label: string;
    /** Said when the picture can't be drawn. */
    readonly failed: string;
  };
}

/** How long a log-in has left, and what is said before it ends. */
export interface LogInEndModel {
  readonly left: LogInLeft;
  /** `{at}` is filled in by the browser. */
  readonly words: {
    readonly soon: string;
    readonly latest: string;
    readonly stay: string;
    readonly stays: string;
    /** The press to stay did not reach the server. */
    readonly unreached: string;
    readonly over: string;
    readonly signIn: string;
  };
}

/** In seconds: if nobody uses it, and in any case. */
export interface LogInLeft {
  readonly unused: number;
  readonly latest: number;
}

/** What stands around every page. */
export interface FrameModel {
  /** The first page of whoever is logged in. */
  readonly home: string;
  readonly signOut: string;
  readonly product: string;
  readonly academyName: string;
  readonly viewer: string;
  /** The viewer's own account. */
  readonly account: string;
  readonly asOf: string;
  /** Said on every page of the demo; null elsewhere. */
  readonly demo: {
    readonly line: string;
    /** A sentence of its own behind the line; empty: none. */
    readonly about: string;
    readonly start: Link;
  } | null;
  /** Something that holds of every page just now; empty: nothing. */
  readonly notice: string;
  /** How long the log-in lasts, and what is said before it ends. */
  readonly logIn: LogInEndModel | null;
  readonly navigation: readonly (Link & { readonly id: string })[];
  readonly skip: string;
  /** What every page leads to at its foot. */
  readonly foot: readonly Link[];
  readonly chartWords: ChartWords;
}

/** The few words that a chart's own controls need. */
export interface ChartWords {
  readonly goalBand: string;
  readonly table: string;
  readonly liveChart: string;
}
