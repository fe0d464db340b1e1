/** What an analysis is of. */
export interface AnalysisKey {
  readonly fundamentalId: string;
  readonly clubGroup: string;
  readonly asOf: string;
  readonly policyVersion: string;
}

/** What an analysis rests on; stale when the student's revision has grown past it. */
export interface AnalysisBasis {
  readonly noiseModel: string;
  readonly dataRevision: number;
}

/** A kept analysis; summary and body are opaque here. */
export interface KeptAnalysis extends AnalysisKey, AnalysisBasis {
  readonly summary: string;
  readonly body: string;
}
