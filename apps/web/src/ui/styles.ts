import badges from './badges.module.css';
import buttons from './buttons.module.css';
import fields from './fields/fields.module.css';
import layout from './layout.module.css';
import notes from './notes.module.css';
import tabs from './tabs.module.css';
import text from './text.module.css';

/**
 * The classes that every screen shares, by their camel-case names: `ui.rowBetween`, `ui.buttonMain`, `ui.soft`.
 * What only one component needs is in a module of its own beside it, imported as `styles`.
 */
export const ui = { ...text, ...layout, ...buttons, ...fields, ...badges, ...notes, ...tabs };
