// Gives specs the class names of a CSS module under the names by which the page gets them from Vite.
const camelCase = (name) => name.replace(/-([a-z])/g, (_, letter) => letter.toUpperCase());

export default {
  process(source) {
    const names = [...source.replace(/\/\*[\s\S]*?\*\//g, '').matchAll(/\.([a-z][\w-]*)/gi)].map(([, name]) => name);
    const classes = Object.fromEntries(names.flatMap((name) => [name, camelCase(name)].map((key) => [key, name])));
    return { code: `module.exports = ${JSON.stringify(classes)};` };
  },
};
