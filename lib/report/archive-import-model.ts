/** An uploaded archive before it is taken in: what is asked, what stands in the way, what differs, what will be saved. */
export interface ArchiveImportPage {
  readonly title: string;
  readonly lede: string;
  readonly draftId: string;
  readonly asked: {
    readonly margin: string;
    readonly heading: string;
    readonly why: string;
    /** With options it is a choice, else a text. */
    readonly fields: readonly {
      readonly name: string;
      readonly label: string;
      readonly value: string;
      readonly options?: readonly { readonly value: string; readonly label: string }[];
    }[];
    readonly submit: string;
  } | null;
  /** Lists in the order in which they matter: what is in the way, what differs, what will be saved. */
  readonly lists: readonly {
    readonly margin: string;
    readonly heading: string;
    readonly items: readonly string[];
  }[];
  /** Null while something is asked or refused. */
  readonly submit: string | null;
  readonly drop: string;
}
