// The package with its module as text is one chunk of some 710 kB, half of which is text of the module; Vite
// warns from 500 kB on. cupwright/slim with the module as a file of its own stays below.
export default { build: { chunkSizeWarningLimit: 750 } };
