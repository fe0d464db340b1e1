import { IntlMessageFormat } from "intl-messageformat";

type Ast = ReturnType<IntlMessageFormat["getAst"]>;
type Part = Ast[number];

/** What stands for an argument: a short word, so that only the message's own words are graded. */
const ARGUMENT = "May";

function branchesOfPart(part: Part): readonly string[] {
  if ("options" in part) return Object.values(part.options).flatMap(({ value }) => branchesOfAst(value));
  // 0: words; 7: the number of a plural; whatever else is an argument.
  if (part.type === 0) return [part.value];
  return [part.type === 7 ? "4" : ARGUMENT];
}

function branchesOfAst(ast: Ast): readonly string[] {
  return ast.reduce<readonly string[]>(
    (texts, part) => {
      const branches = branchesOfPart(part);
      return texts.flatMap((text) => branches.map((branch) => text + branch));
    },
    [""],
  );
}

/** Every text that a message can be, by its plurals and choices, with a short word for each argument. */
export function messageBranches(message: string): readonly string[] {
  const format = new IntlMessageFormat(message, "en", undefined, { ignoreTag: true });
  return [...new Set(branchesOfAst(format.getAst()))];
}
