/** A finished sentence with its gaps, written like {name}, filled in. */
export function fillWords(sentence: string, gaps: Readonly<Record<string, string | number>>): string {
  return sentence.replace(/\{(\w+)\}/g, (gap, name: string) => String(gaps[name] ?? gap));
}
