/** Class names of a module, as written and in camel case. */
declare module '*.module.css' {
  const classes: Readonly<Record<string, string>>;
  export default classes;
}

/** Global style sheets are read by Vite; to the compiler they are files without exports. */
declare module '*.css';
