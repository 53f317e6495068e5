// Properties are tried on the same cases in every run, so that a red run can be repeated; FC_SEED tries others.
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20261125) });
