import type { Link } from "./basic-model";

/** The first step of a group session: who was filmed, what is read, and how many swings each. */
export interface ChooseGroupPage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly margin: string;
  readonly explains: string;
  /** What is missing of a choice that was sent; empty: nothing, or none was sent. */
  readonly error: string;
  readonly lists: readonly {
    readonly name: "student" | "column";
    readonly legend: string;
    readonly options: readonly { readonly value: string; readonly label: string; readonly ticked: "yes" | "no" }[];
  }[];
  readonly clubGroup: {
    readonly label: string;
    readonly value: string;
    readonly options: readonly { readonly value: string; readonly label: string }[];
  };
  readonly swings: { readonly label: string; readonly value: number; readonly options: readonly number[] };
  readonly submit: string;
}
