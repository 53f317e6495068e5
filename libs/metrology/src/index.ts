export type { Bending } from './checks/percent-bending.js';
export { shiftCheckNeeded } from './checks/shift-check-due.js';
export type { ShiftCheckFacts, ShiftCheckReason } from './checks/shift-check-due.js';
export { judgeShiftCheck } from './checks/shift-check.js';
export type { ShiftCheck, ShiftCheckOutcome } from './checks/shift-check.js';
export { calibrationDueAt } from './dates/calibration-due.js';
export type { DueRequest } from './dates/calibration-due.js';
export { calibrationStatus, itemCalibrationStatus } from './dates/calibration-status.js';
export type {
  CalibrationFacts,
  CalibrationStatus,
  CalibrationStatusName,
  ItemFacts,
} from './dates/calibration-status.js';
export { dueForecast } from './dates/due-forecast.js';
export type { DueForecast, ForecastItem, ForecastJob } from './dates/due-forecast.js';
export { lastKnownGood } from './dates/last-known-good.js';
export type { Evidence } from './dates/last-known-good.js';
export { windowsInForce } from './dates/windows-in-force.js';
export type { CalibrationPeriod } from './dates/windows-in-force.js';
export { evaluateExtension } from './extension/evaluate-extension.js';
export type { ExtensionOutcome, ExtensionStepOutcome } from './extension/evaluate-extension.js';
export type { ExtensionFinding } from './extension/extension-findings.js';
export { extensionReadingProblems } from './extension/extension-readings.js';
export type { ExtensionReadings, ExtensionStep } from './extension/extension-readings.js';
export { evaluateForce } from './force/evaluate-force.js';
export type { ForceOutcome, ForceStepOutcome } from './force/evaluate-force.js';
export type { ForceFinding } from './force/force-criteria.js';
export type { ForceErrors } from './force/force-errors.js';
export { forceReadingProblems } from './force/force-readings.js';
export type { ForceReadings, ForceStep } from './force/force-readings.js';
export type { AlignmentLimit } from './limits/alignment-limits.js';
export { termOf } from './limits/calibration-terms.js';
export type { CalibrationTerm } from './limits/calibration-terms.js';
export type { Note, VerifiedRange } from './outcome.js';
