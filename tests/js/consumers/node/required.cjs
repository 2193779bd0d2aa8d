const { heat } = require("cupwright");

import("./answer.js").then(({ answer }) => console.log(answer(heat)));
