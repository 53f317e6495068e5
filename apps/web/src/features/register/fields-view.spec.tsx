import { render, screen } from '@testing-library/react';
import type { ItemView } from '#libs/contract/src/index.js';
import { FieldsView } from './fields-view.js';

const said = (label: string) => screen.getByText(label).nextElementSibling?.textContent;

describe('the fields of an item', () => {
  it('stand with their units, whether these can be converted or not', () => {
    const details = { capacityN: 5000, overloadPct: 150 };
    render(<FieldsView item={{ kind: 'load-cell', details, ratings: {} } as unknown as ItemView} />);
    expect(said('Rated force')).toMatch(/^5\s?000 N$/);
    expect(said('Safe overload')).toBe('150 %');
  });

  it('stand in words', () => {
    const details = { utilitiesAtFrame: ['compressed-air', 'power-400v'] };
    render(<FieldsView item={{ kind: 'frame', details, ratings: {} } as unknown as ItemView} />);
    expect(said('Utilities at the frame')).toBe('compressed air, 400 V power');
  });
});
