import { readHeading } from './read-heading.js';

describe('readHeading', () => {
  it.each([
    ['Time [s]', 'timeS', 's'],
    ['Prüfzeit (sek)', 'timeS', 's'],
    ['elapsed_ms', 'timeS', 'ms'],
    ['Force (kN)', 'forceN', 'kN'],
    ['Kraft in N', 'forceN', 'N'],
    ['F / N', 'forceN', 'N'],
    ['Load, lbf', 'forceN', 'lbf'],
    ['eng_stress_MPa', 'stressMPa', 'MPa'],
    ['Spannung in N/mm²', 'stressMPa', 'N/mm²'],
    ['Dehnung (%)', 'strain', '%'],
    ['Dehnung [mm]', 'extensionMm', 'mm'],
    ['Extension [%]', 'strain', '%'],
    ['strain [-]', 'strain', 'mm/mm'],
    ['ε [µm/m]', 'strain', 'µε'],
    ['Längenänderung mm', 'extensionMm', 'mm'],
    ['Traversenweg (mm)', 'displacementMm', 'mm'],
    ['deflection_in', 'displacementMm', 'in'],
    ['Drehmoment [Nm]', 'torqueNm', 'N·m'],
    ['Winkel [°]', 'angleDeg', '°'],
    ['Temp (degC)', 'temperatureC', '°C'],
  ])('reads %s', (heading, channel, unit) => {
    expect(readHeading(heading, '')).toMatchObject({ channel, unit });
  });

  it.each(['True strain [-]', 'Querdehnung [%]', 'Set point force [N]', 'Cycle count', 'Remark'])(
    'leaves %s unread',
    (heading) => {
      expect(readHeading(heading, '')).toMatchObject({ channel: null, unit: null });
    },
  );

  it('takes the unit from the line below', () => {
    expect(readHeading('Standard force', '[kN]')).toMatchObject({ channel: 'forceN', unit: 'kN' });
  });

  it('does not guess a unit', () => {
    expect(readHeading('Force', '')).toMatchObject({ channel: 'forceN', unit: null, unitText: '' });
    expect(readHeading('Force [mm]', '')).toMatchObject({ channel: 'forceN', unit: null, unitText: 'mm' });
  });
});
