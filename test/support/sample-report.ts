import type { BatchResults, ReportDocument } from '#libs/contract/src/index.js';

const strains = Array.from({ length: 120 }, (_, index) => index / 1_000);

function valuesOf(piece: number): BatchResults['rows'][number]['values'] {
  if (piece === 4) return {};
  return {
    tensileStrengthMPa: { value: 140 + piece * 0.83, flags: [], revision: 1 },
    modulusMPa: { value: 8_912 + piece * 11, flags: piece === 2 ? ['short-window'] : [], revision: 1 },
  };
}

/** A report with everything that one may hold, for looking at and for the specs of the drawing. */
export function sampleReport(): ReportDocument {
  return {
    title: 'Test report',
    number: 'TR-2026-0042',
    revision: 2,
    amendment: 'Specimen 2 was measured again; its width read 10.20 mm instead of 10.02 mm.',
    replaces: 'TR-2026-0042 rev. 1',
    laboratory: {
      name: 'Northmoor Cycles Test Laboratory',
      address: '4 Foundry Lane\nNorthmoor',
      place: 'Hall 2, Northmoor',
      contact: 'lab@northmoor.example',
    },
    customer: { team: 'Bags and racks', requester: 'Zofia Łącka', contact: 'zofia@northmoor.example' },
    request: {
      reference: 'R-2031',
      title: 'Hook resin, second supplier',
      purpose: 'Is the second resin as strong as the first?',
    },
    summary: ['Five specimens of PA66-GF30 reached a mean tensile strength of 142 MPa; the smallest was 139 MPa.'],
    batches: [
      {
        method: { designation: 'ISO 527-2', version: 3, title: 'Plastics, tension, moulded' },
        technician: 'Ines Okafor',
        conditions: {
          temperatureC: 23.1,
          humidityPct: 50,
          speed: '1 mm/min, then 5 mm/min',
          conditioning: '88 h at 23 °C and 50 % by ISO 291',
          remarks: '',
        },
        specimens: [1, 2, 3, 4, 5].map((piece) => ({
          label: `R-2031-1-0${piece}`,
          description: 'Moulded bar 1A, 10 mm × 4 mm',
          condition: piece === 3 ? 'Scratch at one shoulder' : '',
          fate: piece === 4 ? 'invalid' : 'tested',
          sizes: [
            { key: 'widthMm', label: 'Width', unit: 'mm', readings: [10.02, 10.04], mean: '10.03' },
            { key: 'thicknessMm', label: 'Thickness', unit: 'mm', readings: [4.01, 4.01, 4.01], mean: '4.01' },
          ],
        })),
        items: [
          {
            role: 'load cell',
            tag: 'LC-10K-1',
            name: 'Load cell 10 kN',
            calibration: 'ISO 7500-1 class 0.5, 100 N to 10 kN',
            certificate: 'C-2026-118',
            dueAt: '2027-03-02T00:00:00Z',
          },
          {
            role: 'grips',
            tag: 'GP-PN-10',
            name: 'Pneumatic grips 10 kN',
            calibration: '',
            certificate: '',
            dueAt: null,
          },
        ],
        curves: [1, 2].map((piece) => ({
          id: `curve-${piece}`,
          specimenLabel: `R-2031-1-0${piece}`,
          columns: [
            { key: 'strainPct', label: 'Strain', unit: '%' },
            { key: 'stressMPa', label: 'Stress', unit: 'MPa' },
          ],
          points: {
            strainPct: strains.map((strain) => strain * 30),
            stressMPa: strains.map((strain) => 140 * piece ** 0.05 * (1 - Math.exp(-strain * 40))),
          },
          marks: [{ key: 'tensileStrengthMPa', label: 'Strength', x: 3.57, y: 140 }],
          sha256: 'a'.repeat(64),
          fileName: 'bar.csv',
          rows: 120,
        })),
        stressStrain: [
          {
            ...{ id: 'curve-1', specimenLabel: 'R-2031-1-01', sha256: 'a'.repeat(64), fileName: 'bar.csv', rows: 120 },
            columns: [
              { key: 'strainPct', label: 'Strain by its results', unit: '%' },
              { key: 'stressMPa', label: 'Stress by its results', unit: 'MPa' },
            ],
            points: {
              strainPct: strains.map((strain) => strain * 30),
              stressMPa: strains.map((strain) => strain * 1000),
            },
            marks: [],
          },
        ],
        results: {
          batchId: 'batch',
          label: 'Bars, dry',
          method: 'ISO 527-2',
          material: 'PA66-GF30',
          columns: [
            {
              ...{ key: 'tensileStrengthMPa', label: 'Tensile strength', unit: 'MPa', step: 0.1 },
              definition: 'highest force over the original section',
            },
            {
              ...{ key: 'modulusMPa', label: 'Modulus', unit: 'MPa', step: 10 },
              definition:
                'slope of stress over strain, chord between 0.05 % and 0.25 % strain, over the gauge length 75 mm',
            },
          ],
          rows: [1, 2, 3, 4, 5].map((piece) => ({
            specimenId: `specimen-${piece}`,
            label: `R-2031-1-0${piece}`,
            fate: piece === 4 ? 'invalid' : 'tested',
            invalidWhy: piece === 4 ? 'broke in the jaw' : null,
            values: valuesOf(piece),
          })),
          statistics: [
            {
              key: 'tensileStrengthMPa',
              label: 'Tensile strength',
              unit: 'MPa',
              ...{
                n: 4,
                mean: 142.28,
                standardDeviation: 1.42,
                cvPct: 1,
                ci95: { low: 140, high: 144.5 },
                min: 140.8,
                max: 144.2,
                median: 142,
              },
              possibleOutliers: ['R-2031-1-05'],
              toleranceBound: {
                low: 134.98,
                k: 5.1439,
                sentence: '95 % of such specimens lie above 135 MPa with 95 % confidence (k = 5.14).',
              },
              uncertainty: {
                expanded: 1.72,
                k: 2,
                budget: [
                  { source: 'Force, class 0.5', value: 0.41, contributionPct: 23 },
                  { source: 'Repeatability', value: 0.71, contributionPct: 77 },
                ],
              },
            },
          ],
          conformity: null,
        },
      },
    ],
    sampling: '',
    deviations: ['Grip separation 110 mm instead of 115 mm, agreed with the customer.'],
    opinions: ['The scatter is that of a dry resin; σ and ε were read by a contacting extensometer.'],
    conformity: [
      {
        specification: 'NM-SPEC-17 (mean strength ≥ 120 MPa)',
        statement: 'conforms',
        rule: 'guarded by U',
        detail: 'Mean 142.3 MPa, limit 120 MPa.',
      },
    ],
    uncertaintyNote: 'Expanded uncertainty with k = 2, for a coverage probability of about 95 %, by the GUM.',
    relatesOnlyToItems: 'The results relate only to the items tested. This report may be copied only as a whole.',
    dates: {
      received: '2026-11-02T08:00:00Z',
      testedFrom: '2026-11-09T08:00:00Z',
      testedTo: '2026-11-09T15:00:00Z',
      issued: '2026-11-12T09:00:00Z',
    },
    external: '',
    authorisedBy: { name: 'Harriet Boone', function: 'Head of laboratory' },
    verifyPath: '/verify/TR-2026-0042',
  };
}
