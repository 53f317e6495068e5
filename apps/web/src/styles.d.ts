/** Style sheets are read by Vite; to the compiler they are files without exports. */
declare module '*.css';
