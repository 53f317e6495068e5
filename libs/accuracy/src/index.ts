/*
 * Accuracy classes of force and extension: what each class of ISO 7500-1, ASTM E4, ISO 9513 and ASTM E83 allows, and which class meets
 * which. It imports nothing of ours, so that matching and metrology give one answer.
 */
export { allowedExtension } from './allowed-extension.js';
export type { AllowedExtension } from './allowed-extension.js';
export { classesThatMeet, classMeets, classReserve, lowerClass } from './class-meets.js';
export type { ClassName, ExtensionUse } from './class-meets.js';
export { EXTENSION_CLASSES, extensionClassesOf } from './extension-classes.js';
export type { ExtensionClass, ExtensionStandard } from './extension-classes.js';
export { FORCE_CLASSES } from './force-classes.js';
export type { ForceClass } from './force-classes.js';
export type { Provenance } from './provenance.js';
