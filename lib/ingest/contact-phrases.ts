/** Phrases that name no strike though they hold its words; and what came before is another matter. Common practice, no source. */
const TRAPS = [
  /\b(?:at|to|from|until|near) the top\b/g,
  /\btop of (?:the |his |her |my )?(?:back)?swing\b/g,
  /\btop (?:hand|half|position|tilt|speed|of)\b/g,
  /(?<!\b(?:balls?|shots?|strikes?|hit|struck|caught|contact)\b[^,;.]{0,12})\b(?:on|over|into|onto|up on) (?:his|her|my|the|your) (?:toes?|heels?)\b/g,
  /\b(?:heel|toe) (?:lift|lifts|up|down|line|pressure|wear)\b/g,
  /\b(?:lead|trail|left|right|back|front) (?:heel|toe)s?\b/g,
  /\b(?:heavy|fat|thin|solid|skinny) (?:legs?|arms?|grips?|posture|base|stance|setup|set-up|rain|wind|bag|shoes?|routine|start|week|day|lesson|practice|progress|club)\b/g,
  /\bclean(?:ed|ing)? (?:the |his |her |my )?(?:club|clubs|face|grooves|grip|grips|shoes?)\b/g,
  /\bgood (?:lesson|day|week|mood|posture|grip|practice|rhythm|tempo|turn|set-up|setup|start|progress|question|light|night|morning|job)\b/g,
  /\b(?:blue|clear|grey|cloudy|dark) sky\b/g,
  /\bsky (?:was|is|looked)\b/g,
  // What it is held against is another time; what is said is of now.
  /\bthan (?:last|the last|in) [a-z]+\b/g,
] as const;

/** What is said of another time. */
const HISTORY =
  /\b(?:used to|last (?:week|month|year|season|time|film|lesson|summer|winter)|yesterday|previously|in the past|years ago|months ago|weeks ago|back then|as a kid|formerly|before (?:the|this) (?:drill|lesson|season))\b/;

/** What turns a word round, and how many words later it still does. */
export const NEGATIONS =
  /^(?:no|not|never|without|none|wasn't|weren't|isn't|aren't|didn't|don't|doesn't|hasn't|haven't|zero|nothing|neither|nor|instead|rather|avoided|stopped)$/;
export const NEGATION_REACH = 3;

/** A word beside which a loose word names a strike. */
export const SHOT_WORDS =
  /^(?:balls?|shots?|strikes?|striking|struck|hits?|hit|contact|ones?|impact|caught|catching|iron|irons|driver|drives?|wedges?|swings?|attempts?|tries|face|hybrids?|woods?)$/;

/** Words that a bare list may hold besides numbers and strikes. */
export const LIST_WORDS =
  /^(?:x|a|an|the|of|and|or|but|then|was|were|is|are|with|only|just|also|again|today|bit|little|slightly|very|really|quite|so|too|still|some|few|several|many|most|mostly|mainly|less|fewer|every|each|touch|shade|tad|hair|lots|plenty|more|rest|other|others|them|all|both|half|couple|pair|once|twice|out|times?|got|had|about|maybe|nearly|almost|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|no|not|none|never|first|second|third|fourth|fifth|last|left|late|early|end|miss|misses|mostly|it|i|he|she|they|we|now|better|much|any|single|zero|without|wasn't|weren't|isn't|didn't|instead|rather|than)$/;

/** A clause with its traps blanked out, length kept. */
export function withoutTraps(clause: string): string {
  return TRAPS.reduce((text, trap) => text.replace(trap, (found) => " ".repeat(found.length)), clause);
}

/** Whether a clause speaks of another time. */
export function isHistory(clause: string): boolean {
  return HISTORY.test(clause);
}

const NUMBER_WORDS = [
  "zero",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
] as const;

/** A small number in figures or words; null: none. */
export function smallNumber(word: string): number | null {
  if (/^\d{1,3}$/.test(word)) return Number(word);
  const at = (NUMBER_WORDS as readonly string[]).indexOf(word);
  return at < 0 ? null : at;
}

/**
 * The form in which phrases about strikes are compared: any number is `#`, words that only join or measure are left out,
 * what turns round stays.
 *
 * @param ahead words before the strike, back to the strike before it
 * @param strike its own words
 * @param behind words after it, up to the next strike
 * @param numbers `as-said`: each number as it stands, for what is said of a single count
 */
export function comparedPhrase(
  ahead: readonly string[],
  strike: readonly string[],
  behind: readonly string[],
  numbers: "alike" | "as-said" = "alike",
): string {
  const kept = (words: readonly string[]): string[] =>
    words.flatMap((word) => {
      if (/^x?\d/.test(word) || smallNumber(word) !== null || NUMBER_LIKE.test(word))
        return [numbers === "alike" ? "#" : word];
      return LIST_WORDS.test(word) && !NEGATIONS.test(word) ? [] : [word];
    });
  return [...kept(ahead), ...strike, ...kept(behind)].join(" ");
}

const NUMBER_LIKE = /^(?:couple|pair|both|once|twice)$/;

/**
 * Whether a phrase, its numbers as said, counts by a word that not everybody means the same number with. Only such a count
 * can be said for every note: what “x3” was once meant to be says nothing of the next.
 */
export function isLooseCount(said: string): boolean {
  return /(?:^| )(?:couple|pair)(?: |$)/.test(said) && !/\d/.test(said);
}
