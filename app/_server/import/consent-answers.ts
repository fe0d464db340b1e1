/** Answers after which it is asked who gave the consent. */
const NEW = /^answer:(student:.+)$/;
const KNOWN = /^answer:(consent:.+)$/;

/**
 * Answers of a program or command together with who confirmed consent on paper: said once, it stands beside every answer that
 * takes a new student, or one of whom no consent is on file; what was said of one of them holds before it.
 *
 * @param who empty: nobody said
 */
export function withConsentBy(
  answers: readonly (readonly [string, string])[],
  who: string,
): readonly (readonly [string, string])[] {
  if (who.trim() === "") return answers;
  const said = new Set(answers.map(([name]) => name));
  return [
    ...answers,
    ...answers.flatMap(([name, value]): [string, string][] => {
      const id = value.startsWith("new-")
        ? NEW.exec(name)?.[1]
        : value === "on-paper"
          ? KNOWN.exec(name)?.[1]
          : undefined;
      const field = `answer-givenBy:${id}`;
      return id === undefined || said.has(field) ? [] : [[field, who]];
    }),
  ];
}
