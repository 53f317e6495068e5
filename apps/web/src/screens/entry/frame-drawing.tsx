/** A two-column frame with its load train, drawn like a general arrangement. */
export function FrameDrawing() {
  return (
    <svg viewBox="0 0 420 560" fill="none" stroke="currentColor" strokeWidth="1.5">
      <path d="M60 40h300v34H60zM84 74v400M108 74v400M312 74v400M336 74v400" />
      <path d="M60 474h300v46H60zM40 520h340" />
      <path d="M70 120h280v40H70z" strokeWidth="2.5" />
      <path d="M84 120v40M108 120v40M312 120v40M336 120v40" />
      <path d="M210 30v510" strokeDasharray="18 5 4 5" strokeWidth="0.75" />
      <path d="M204 160v10h12v-10M186 170h48v46h-48zM186 186h32M234 200h-32M204 216v12h12v-12" />
      <path d="M190 228h40v18l-9 34h-22l-9 -34zM205 246v34M215 246v34" />
      <path
        d="M201 272h18v20c0 8 -4 8 -4 16v24c0 8 4 8 4 16v20h-18v-20c0 -8 4 -8 4 -16v-24c0 -8 -4 -8 -4 -16z"
        strokeWidth="2.5"
      />
      <path d="M190 412h40v-18l-9 -34h-22l-9 34zM205 360v34M215 360v34M204 412v12h12v-12M196 424h28v50h-28z" />
      <path d="M156 316h44M156 324h44M156 306v28" stroke="var(--act)" />
      <path d="M270 160h36M270 474h36M296 164v306M292 172l4 -8 4 8M292 462l4 8 4 -8" strokeWidth="0.75" />
      <text
        x="302"
        y="322"
        fontFamily="var(--figures)"
        fontSize="13"
        fill="currentColor"
        stroke="none"
        transform="rotate(-90 302 322) translate(-28 -10)"
      >
        314 mm
      </text>
      <path d="M130 308h-60M130 332h-60M78 296v12M78 344v-12M74 302l4 6 4 -6M74 338l4 -6 4 6" strokeWidth="0.75" />
      <text x="40" y="325" fontFamily="var(--figures)" fontSize="13" fill="currentColor" stroke="none">
        50 mm
      </text>
      <path d="M234 190h60M228 254h40M219 320h58" strokeWidth="0.75" />
    </svg>
  );
}
