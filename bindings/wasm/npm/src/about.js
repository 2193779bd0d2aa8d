// Made by `cargo xtask face`. Do not edit.

/** Every quantity by its key: name, unit, the usual name of its field, range, decimals, meaning, source. */
export const limits = Object.freeze({
  addition: {"code":4,"decimals":1,"field":"added_g","max":200000,"meaning":"Water or milk added to the beverage after the brew.","min":0,"name":"addition","source":"range chosen here: as for the beverage","unit":"g","whole":false},
  altitude: {"code":35,"decimals":0,"field":"altitude_m","max":5550,"meaning":"Height above sea level.","min":-650,"name":"altitude","source":"range chosen here: inhabited places, inside that of the pressure","unit":"m","whole":false},
  apparent_retention: {"code":13,"decimals":2,"field":"apparent_retention_g_per_g","max":10,"meaning":"Brew water missing from the beverage per gram of dose, apart from losses named separately: what a scale sees.","min":0,"name":"apparent retention","source":"range chosen here; published values 1.5 to 2.5","unit":"g/g","whole":false},
  batches: {"code":55,"decimals":0,"field":"batches","max":1000,"meaning":"Brews made one after the other in one chamber.","min":1,"name":"batches","source":"range chosen here","unit":"","whole":true},
  beverage: {"code":3,"decimals":1,"field":"beverage_g","max":200000,"meaning":"Brewed coffee that reaches the cup or server.","min":0.1,"name":"beverage","source":"range chosen here: a tasting spoon to a catering brewer","unit":"g","whole":false},
  beverage_ratio: {"code":18,"decimals":2,"field":"beverage_ratio_g_per_g","max":200,"meaning":"Beverage per gram of dose.","min":0.5,"name":"beverage ratio","source":"range chosen here: no brew leaves less than half its dose","unit":"g/g","whole":false},
  body_count: {"code":58,"decimals":0,"field":"bodies","max":8,"meaning":"Solids that meet a liquid in one heat balance, where an interface has room for only so many.","min":0,"name":"bodies","source":"range chosen here: kettle, brewer, grounds, paper, cup and three more","unit":"","whole":true},
  brew_water: {"code":2,"decimals":1,"field":"water_g","max":200000,"meaning":"Water poured onto the coffee.","min":0.1,"name":"brew water","source":"range chosen here: a tasting spoon to a catering brewer","unit":"g","whole":false},
  brix: {"code":45,"decimals":2,"field":"brix","max":30.5,"meaning":"Sugar-scale reading of a refractometer.","min":-2,"name":"Brix","source":"range of the sucrose fit, its margin and a zero error","unit":"°Bx","whole":false},
  brix_uncertainty: {"code":90,"decimals":3,"field":"u_brix","max":32.5,"meaning":"Standard uncertainty of a Brix reading, or a limit or step that one is made from.","min":0,"name":"uncertainty of a Brix reading","source":"range of the Brix","unit":"°Bx","whole":false},
  caffeine: {"code":52,"decimals":0,"field":"caffeine_mg","max":450000,"meaning":"Caffeine in a drink.","min":0,"name":"caffeine","source":"range of dose and content","unit":"mg","whole":false},
  caffeine_content: {"code":51,"decimals":1,"field":"caffeine_mg_per_g","max":45,"meaning":"Caffeine in ground coffee as weighed.","min":0,"name":"caffeine content","source":"range chosen here; green beans 8 to 40 mg/g dry","unit":"mg/g","whole":false},
  capacity: {"code":103,"decimals":0,"field":"capacity_g","max":100000,"meaning":"The most that a scale can weigh.","min":10,"name":"scale capacity","source":"range chosen here","unit":"g","whole":false},
  change: {"code":107,"decimals":2,"field":"change_g","max":1000000000,"meaning":"A difference of two readings.","min":-1000000000,"name":"change of weight","source":"range chosen here","unit":"g","whole":false},
  clock: {"code":100,"decimals":2,"field":"clock_s","max":5000000000,"meaning":"Time on a clock that only goes forward, from any beginning.","min":0,"name":"clock","source":"range chosen here: 32 bits of milliseconds a thousand times over","unit":"s","whole":false},
  confidence: {"code":73,"decimals":1,"field":"confidence_pct","max":99.9,"meaning":"How sure a statement has to be.","min":50,"name":"confidence","source":"range chosen here","unit":"%","whole":false},
  cooling_rate: {"code":42,"decimals":5,"field":"cooling_per_min","max":1,"meaning":"Rate constant of the cooling law.","min":1e-6,"name":"cooling rate","source":"range chosen here; measured open mugs 0.005 to 0.008","unit":"1/min","whole":false},
  cooling_rate_uncertainty: {"code":84,"decimals":5,"field":"u_cooling_per_min","max":10,"meaning":"Standard uncertainty of a cooling rate.","min":0,"name":"uncertainty of a cooling rate","source":"range chosen here","unit":"1/min","whole":false},
  correlation: {"code":76,"decimals":3,"field":"correlation","max":1,"meaning":"Correlation of two values' errors.","min":-1,"name":"correlation","source":"definition","unit":"","whole":false},
  coverage_factor: {"code":75,"decimals":2,"field":"coverage_factor","max":1000,"meaning":"Expanded uncertainty over standard uncertainty.","min":0.5,"name":"coverage factor","source":"Student t over the range of confidence","unit":"","whole":false},
  cup_number: {"code":82,"decimals":0,"field":"cup","max":30,"meaning":"Which cup a reading is of, where several cups were read several times each.","min":1,"name":"cup number","source":"as many as measurements","unit":"","whole":true},
  degrees_of_freedom: {"code":71,"decimals":1,"field":"degrees_of_freedom","max":1000000000,"meaning":"How well an uncertainty is itself known, as if from so many repeats and one more; the highest stands for as good as known.","min":1,"name":"degrees of freedom","source":"GUM G.4; the highest chosen here","unit":"","whole":false},
  density: {"code":36,"decimals":2,"field":"density_kg_per_m3","max":1001,"meaning":"Density of liquid water.","min":950,"name":"density","source":"IAPWS SR6-08 over the range of the temperature","unit":"kg/m³","whole":false},
  diameter: {"code":44,"decimals":0,"field":"diameter_mm","max":1000,"meaning":"Inner diameter of a cup at the liquid's surface.","min":10,"name":"surface diameter","source":"range chosen here","unit":"mm","whole":false},
  displacement: {"code":16,"decimals":2,"field":"displacement_ml_per_g","max":5,"meaning":"Volume that a gram of wetted grounds takes up under water.","min":0,"name":"grounds displacement","source":"range chosen here; no published value found, read the level before and after","unit":"mL/g","whole":false},
  division: {"code":102,"decimals":3,"field":"division_g","max":10,"meaning":"The smallest step of a scale's reading.","min":0.001,"name":"scale division","source":"range chosen here","unit":"g","whole":false},
  dose: {"code":1,"decimals":1,"field":"dose_g","max":10000,"meaning":"Ground coffee as weighed, its moisture included.","min":0.1,"name":"dose","source":"range chosen here: a tasting spoon to a catering brewer","unit":"g","whole":false},
  dose_per_litre: {"code":19,"decimals":1,"field":"dose_g_per_l","max":5100,"meaning":"Dose per litre of brew water at the water's temperature.","min":4,"name":"dose per litre","source":"range of the water ratio","unit":"g/L","whole":false},
  doubt: {"code":72,"decimals":0,"field":"doubt_pct","max":70,"meaning":"How uncertain an uncertainty is, over itself.","min":0,"name":"doubt","source":"one degree of freedom or more by GUM G.3","unit":"%","whole":false},
  drips: {"code":10,"decimals":1,"field":"drips_g","max":5000,"meaning":"Liquid that drips away before the press or the drain and never reaches the cup.","min":0,"name":"drips lost","source":"range chosen here","unit":"g","whole":false},
  enthalpy: {"code":38,"decimals":2,"field":"enthalpy_j_per_g","max":441,"meaning":"Heat content of liquid water above that at 0 °C.","min":0,"name":"heat content","source":"IAPWS SR6-08 over the range of the temperature","unit":"J/g","whole":false},
  factor_uncertainty: {"code":67,"decimals":2,"field":"u_factor_pct","max":50,"meaning":"Standard uncertainty of a refractive factor over its value: common to all readings of one coffee.","min":0,"name":"uncertainty of the refractive factor","source":"range chosen here","unit":"%","whole":false},
  fastest_pour: {"code":104,"decimals":1,"field":"fastest_g_per_s","max":100,"meaning":"The fastest that water is poured: a reading that rises faster is something else.","min":2,"name":"fastest pour","source":"range chosen here","unit":"g/s","whole":false},
  fitted_hold_up: {"code":81,"decimals":1,"field":"fitted_hold_up_g","max":5000,"meaning":"Chamber hold-up as a line through several brews has it, which may come out a little below zero.","min":-5000,"name":"fitted hold-up","source":"range of the hold-up, either side","unit":"g","whole":false},
  flow: {"code":105,"decimals":2,"field":"flow_g_per_s","max":100000000,"meaning":"How fast a reading rises.","min":-100000000,"name":"flow","source":"range chosen here: a scale's range within a millisecond","unit":"g/s","whole":false},
  flow_variation: {"code":110,"decimals":0,"field":"flow_variation_pct","max":100000,"meaning":"How much the flow of a pour wanders: its standard deviation over its mean.","min":0,"name":"flow variation","source":"range chosen here","unit":"%","whole":false},
  heat_capacity: {"code":40,"decimals":0,"field":"heat_capacity_j_per_k","max":1000000,"meaning":"Heat needed to warm a whole vessel, or the part of it that warms, by a kelvin.","min":0,"name":"heat capacity","source":"range chosen here","unit":"J/K","whole":false},
  heat_capacity_uncertainty: {"code":83,"decimals":1,"field":"u_heat_capacity_j_per_k","max":1000000,"meaning":"Standard uncertainty of a heat capacity.","min":0,"name":"uncertainty of a heat capacity","source":"range chosen here","unit":"J/K","whole":false},
  held_strength: {"code":24,"decimals":0,"field":"held_strength_pct","max":100,"meaning":"Strength of the liquid left in the grounds, as a share of the beverage's: 0 % flowed through, 100 % steeped.","min":0,"name":"held strength","source":"the two published forms of the mass balance","unit":"%","whole":false},
  hold_up: {"code":9,"decimals":1,"field":"hold_up_g","max":5000,"meaning":"Liquid that the chamber and its filter keep whatever the dose.","min":0,"name":"chamber hold-up","source":"range chosen here","unit":"g","whole":false},
  humidity: {"code":43,"decimals":0,"field":"humidity_pct","max":100,"meaning":"Relative humidity of the air.","min":0,"name":"humidity","source":"definition","unit":"%","whole":false},
  ice: {"code":5,"decimals":1,"field":"ice_g","max":200000,"meaning":"Ice added to the beverage, or what is left of it.","min":0,"name":"ice","source":"range chosen here: as for the beverage","unit":"g","whole":false},
  ice_temperature: {"code":31,"decimals":1,"field":"ice_c","max":0,"meaning":"Temperature of ice.","min":-40,"name":"ice temperature","source":"range chosen here: below a freezer to melting","unit":"°C","whole":false},
  latent_heat: {"code":39,"decimals":1,"field":"latent_heat_j_per_g","max":2510,"meaning":"Heat taken up when a gram of water turns to vapour.","min":2200,"name":"latent heat","source":"IAPWS-95 over the range of the temperature","unit":"J/g","whole":false},
  lead: {"code":109,"decimals":2,"field":"lead_s","max":1.5,"meaning":"How long before its time a cue is given.","min":0,"name":"lead of a cue","source":"range chosen here","unit":"s","whole":false},
  level: {"code":111,"decimals":2,"field":"level_g","max":1000000000,"meaning":"What lies on a scale since it was last set to zero, without noise.","min":-1000000000,"name":"level of a scale","source":"range chosen here","unit":"g","whole":false},
  liquid: {"code":6,"decimals":1,"field":"liquid_g","max":400000,"meaning":"Any watery liquid that takes part in a heat balance.","min":0.1,"name":"liquid","source":"range chosen here: beverage and addition together","unit":"g","whole":false},
  mass_uncertainty: {"code":59,"decimals":2,"field":"u_g","max":400000,"meaning":"Standard uncertainty of a mass, or a limit or step that one is made from.","min":0,"name":"uncertainty of a mass","source":"range chosen here: as for the largest mass","unit":"g","whole":false},
  measurand: {"code":68,"decimals":3,"field":"value","max":1000000000,"meaning":"Any value in a unit of its own.","min":-1000000000,"name":"measurand","source":"range chosen here","unit":"","whole":false},
  measurements: {"code":80,"decimals":0,"field":"measurements","max":30,"meaning":"Measurements from which something is learned.","min":0,"name":"measurements","source":"range chosen here: a month of brews, and what a small device has room for","unit":"","whole":true},
  milk_solids: {"code":50,"decimals":1,"field":"milk_solids_pct","max":80,"meaning":"Solids of milk, per mass of milk or of drink.","min":0,"name":"milk solids","source":"range chosen here: skim to condensed","unit":"%","whole":false},
  moisture: {"code":22,"decimals":1,"field":"moisture_pct","max":15,"meaning":"Water in the dose as weighed.","min":0,"name":"moisture","source":"range chosen here; roasted coffee 1 to 5 % (trade pages)","unit":"%","whole":false},
  paper_mass: {"code":11,"decimals":1,"field":"paper_g","max":500,"meaning":"Dry filter paper.","min":0,"name":"filter paper","source":"range chosen here","unit":"g","whole":false},
  paper_uptake: {"code":12,"decimals":1,"field":"paper_uptake_g_per_g","max":20,"meaning":"Water that a gram of dry filter paper takes up.","min":0,"name":"paper uptake","source":"range chosen here; no published value found, weigh a wet paper","unit":"g/g","whole":false},
  poured: {"code":106,"decimals":1,"field":"poured_g","max":1000000000,"meaning":"Water that was poured, as a scale saw it: its noise can bring it below zero.","min":-1000000000,"name":"water poured","source":"range chosen here","unit":"g","whole":false},
  pressure: {"code":33,"decimals":1,"field":"pressure_kpa","max":110,"meaning":"Pressure of the air where the brew is made (station pressure, not reduced to sea level).","min":50,"name":"air pressure","source":"range chosen here: 5500 m to below sea level","unit":"kPa","whole":false},
  probability: {"code":74,"decimals":1,"field":"probability_pct","max":100,"meaning":"Probability of a statement.","min":0,"name":"probability","source":"definition","unit":"%","whole":false},
  reading_count: {"code":56,"decimals":0,"field":"readings","max":10,"meaning":"Repeated readings of one sample.","min":1,"name":"readings","source":"critical-range factors are given for 2 to 10","unit":"","whole":true},
  refractive_factor: {"code":47,"decimals":3,"field":"refractive_factor_pct_per_brix","max":2,"meaning":"Strength per degree Brix of a coffee.","min":0.3,"name":"refractive factor","source":"range chosen here; reported 0.85 to 1.5","unit":"%/°Bx","whole":false},
  refractive_index: {"code":46,"decimals":5,"field":"refractive_index","max":1.382,"meaning":"Refractive index relative to air at the sodium line.","min":1.33,"name":"refractive index","source":"range of the sucrose fit","unit":"","whole":false},
  repeat_count: {"code":78,"decimals":0,"field":"repeats","max":100,"meaning":"Repeats whose scatter tells an uncertainty.","min":2,"name":"repeats","source":"range chosen here; one alone has no scatter","unit":"","whole":true},
  repeatability: {"code":49,"decimals":3,"field":"repeatability_pct","max":2,"meaning":"Standard deviation of repeated strength readings of one sample by one person on one instrument.","min":0.0005,"name":"repeatability","source":"range chosen here","unit":"% strength","whole":false},
  rest: {"code":57,"decimals":1,"field":"rest_g","max":200000,"meaning":"Brew left over when cups are filled.","min":0,"name":"rest","source":"range chosen here: as for the beverage","unit":"g","whole":false},
  retained: {"code":7,"decimals":1,"field":"retained_g","max":250000,"meaning":"Liquid left behind by the grounds, the paper and the chamber together, its dissolved coffee included.","min":0,"name":"retained liquid","source":"range chosen here: more than any brew water with moisture","unit":"g","whole":false},
  retention_uncertainty: {"code":65,"decimals":3,"field":"u_retention_g_per_g","max":10,"meaning":"Standard uncertainty of a retention, or a limit that one is made from.","min":0,"name":"uncertainty of a retention","source":"range of the apparent retention","unit":"g/g","whole":false},
  room_temperature: {"code":29,"decimals":1,"field":"room_c","max":50,"meaning":"Temperature of the air.","min":-20,"name":"room temperature","source":"range chosen here: a winter cart to a hot kitchen","unit":"°C","whole":false},
  sample_temperature: {"code":48,"decimals":1,"field":"sample_c","max":40,"meaning":"Temperature of a sample on the prism.","min":10,"name":"sample temperature","source":"range of the correction's fit","unit":"°C","whole":false},
  scale_reading: {"code":101,"decimals":2,"field":"reading_g","max":100000,"meaning":"What a scale shows, or would show: below zero after something was taken off.","min":-100000,"name":"scale reading","source":"range chosen here","unit":"g","whole":false},
  sensitivity: {"code":70,"decimals":3,"field":"sensitivity","max":1000000000000,"meaning":"How much a result changes with an input, in the units of the two.","min":-1000000000000,"name":"sensitivity","source":"range chosen here","unit":"","whole":false},
  servings: {"code":54,"decimals":0,"field":"servings","max":1000,"meaning":"People to be served, or cups.","min":1,"name":"servings","source":"range chosen here","unit":"","whole":true},
  share: {"code":25,"decimals":1,"field":"share_pct","max":100,"meaning":"A share of a whole.","min":0,"name":"share","source":"definition","unit":"%","whole":false},
  share_uncertainty: {"code":62,"decimals":1,"field":"u_share_pct","max":100,"meaning":"Standard uncertainty of a moisture, a held strength or another share, or a limit that one is made from.","min":0,"name":"uncertainty of a share","source":"range of a share","unit":"%","whole":false},
  span_uncertainty: {"code":66,"decimals":2,"field":"u_span_pct","max":50,"meaning":"Standard uncertainty of a scale's span: a relative error common to all that it weighs.","min":0,"name":"uncertainty of the scale's span","source":"range chosen here","unit":"%","whole":false},
  specific_heat: {"code":37,"decimals":3,"field":"specific_heat_j_per_g_k","max":10,"meaning":"Heat needed to warm a gram by a kelvin.","min":0.05,"name":"specific heat","source":"range chosen here: metals to water","unit":"J/(g K)","whole":false},
  spent_moisture: {"code":53,"decimals":1,"field":"spent_moisture_pct","max":95,"meaning":"Water in spent grounds, per mass of wet grounds.","min":0,"name":"spent-grounds moisture","source":"range chosen here; published 50 to 85 % (10.1007/s12649-017-0061-4)","unit":"%","whole":false},
  standard_uncertainty: {"code":69,"decimals":3,"field":"u","max":1000000000,"meaning":"Standard uncertainty in the unit of its value, or a limit or step that one is made from.","min":0,"name":"standard uncertainty","source":"range chosen here: as for any value","unit":"","whole":false},
  step_count: {"code":112,"decimals":0,"field":"steps","max":24,"meaning":"How many steps a recipe that is followed on a scale has.","min":0,"name":"steps","source":"range chosen here: a reading looks at all of them","unit":"","whole":true},
  strength: {"code":20,"decimals":2,"field":"strength_pct","max":50,"meaning":"Total dissolved solids (TDS) of the beverage, per mass of beverage, the brew water's included.","min":0,"name":"strength","source":"range chosen here: far above any brew","unit":"%","whole":false},
  strength_uncertainty: {"code":60,"decimals":3,"field":"u_strength_pct","max":50,"meaning":"Standard uncertainty of a strength, or a limit or step that one is made from.","min":0,"name":"uncertainty of a strength","source":"range of the strength","unit":"%","whole":false},
  temperature: {"code":28,"decimals":1,"field":"water_c","max":105,"meaning":"Temperature of liquid water, brew or milk.","min":0,"name":"temperature","source":"liquid water at the accepted pressures; inside IAPWS SR6-08","unit":"°C","whole":false},
  temperature_drop: {"code":32,"decimals":1,"field":"drop_k","max":105,"meaning":"A drop in temperature.","min":0,"name":"temperature drop","source":"range of the temperature","unit":"K","whole":false},
  temperature_uncertainty: {"code":63,"decimals":2,"field":"u_k","max":105,"meaning":"Standard uncertainty of a temperature, or a limit or step that one is made from.","min":0,"name":"uncertainty of a temperature","source":"range of the temperature","unit":"K","whole":false},
  term_count: {"code":77,"decimals":0,"field":"terms","max":10,"meaning":"Terms of an uncertainty budget, or series of repeats put together.","min":1,"name":"terms","source":"range chosen here: the inputs of a mass balance","unit":"","whole":true},
  time: {"code":26,"decimals":0,"field":"time_s","max":172800,"meaning":"A span of time.","min":0,"name":"time","source":"range chosen here: two days, for cold brews","unit":"s","whole":false},
  time_constant: {"code":27,"decimals":1,"field":"time_constant_s","max":1000000,"meaning":"Time constant of an exponential.","min":0.1,"name":"time constant","source":"range chosen here","unit":"s","whole":false},
  time_constant_uncertainty: {"code":85,"decimals":3,"field":"u_ln_time","max":1000,"meaning":"Standard uncertainty of a time constant over its value, which is that of its logarithm.","min":0,"name":"uncertainty of a time constant","source":"range chosen here","unit":"","whole":false},
  time_uncertainty: {"code":91,"decimals":0,"field":"u_s","max":172800,"meaning":"Standard uncertainty of a span of time.","min":0,"name":"uncertainty of a time","source":"range of the time","unit":"s","whole":false},
  true_retention: {"code":14,"decimals":2,"field":"true_retention_g_per_g","max":15,"meaning":"Liquid that the grounds hold per gram of dose, its dissolved coffee included.","min":0,"name":"true retention","source":"range chosen here","unit":"g/g","whole":false},
  unclear: {"code":108,"decimals":1,"field":"unclear_g","max":1000000000,"meaning":"Weight of which a scale cannot say whether it is water.","min":0,"name":"unclear weight","source":"range chosen here","unit":"g","whole":false},
  vapour: {"code":8,"decimals":1,"field":"vapour_g","max":20000,"meaning":"Water lost as vapour during the brew.","min":0,"name":"vapour lost","source":"range chosen here: a tenth of the largest brew water","unit":"g","whole":false},
  vapour_pressure: {"code":34,"decimals":3,"field":"vapour_pressure_kpa","max":125,"meaning":"Vapour pressure of water.","min":0.6,"name":"vapour pressure","source":"IAPWS-IF97 over the range of the temperature","unit":"kPa","whole":false},
  vessel_mass: {"code":41,"decimals":0,"field":"vessel_g","max":100000,"meaning":"Mass of a vessel, or of the part of it that warms.","min":0,"name":"vessel","source":"range chosen here","unit":"g","whole":false},
  vessel_temperature: {"code":30,"decimals":1,"field":"vessel_c","max":105,"meaning":"Temperature of a vessel, of dry grounds or of paper.","min":-40,"name":"vessel temperature","source":"range chosen here: freezer to boiling water","unit":"°C","whole":false},
  volume: {"code":15,"decimals":1,"field":"volume_ml","max":250000,"meaning":"Volume of a liquid, or of a chamber.","min":0.1,"name":"volume","source":"range chosen here","unit":"mL","whole":false},
  water_ratio: {"code":17,"decimals":2,"field":"water_ratio_g_per_g","max":200,"meaning":"Brew water per gram of dose.","min":0.2,"name":"water ratio","source":"range chosen here","unit":"g/g","whole":false},
  water_solids: {"code":23,"decimals":0,"field":"water_solids_mg_per_l","max":5000,"meaning":"Dissolved solids of the water itself.","min":0,"name":"water solids","source":"range chosen here: above drinking water","unit":"mg/L","whole":false},
  water_solids_uncertainty: {"code":64,"decimals":0,"field":"u_water_solids_mg_per_l","max":5000,"meaning":"Standard uncertainty of the solids of water, or a limit that one is made from.","min":0,"name":"uncertainty of water solids","source":"range of the water solids","unit":"mg/L","whole":false},
  yield: {"code":21,"decimals":2,"field":"yield_pct","max":100,"meaning":"Extraction yield: coffee dissolved, per mass of dose as weighed.","min":0,"name":"yield","source":"mass conservation; published soluble limits are near 30 %","unit":"%","whole":false},
  yield_uncertainty: {"code":61,"decimals":2,"field":"u_yield_pct","max":100,"meaning":"Standard uncertainty of a yield, or a limit that one is made from.","min":0,"name":"uncertainty of a yield","source":"range of the yield","unit":"%","whole":false},
});

/** Keys of `limits` by their lasting codes. */
export const quantityKeys = new Map([[1,"dose"],[2,"brew_water"],[3,"beverage"],[4,"addition"],[5,"ice"],[6,"liquid"],[7,"retained"],[8,"vapour"],[9,"hold_up"],[10,"drips"],[11,"paper_mass"],[12,"paper_uptake"],[13,"apparent_retention"],[14,"true_retention"],[15,"volume"],[16,"displacement"],[17,"water_ratio"],[18,"beverage_ratio"],[19,"dose_per_litre"],[20,"strength"],[21,"yield"],[22,"moisture"],[23,"water_solids"],[24,"held_strength"],[25,"share"],[26,"time"],[27,"time_constant"],[28,"temperature"],[29,"room_temperature"],[30,"vessel_temperature"],[31,"ice_temperature"],[32,"temperature_drop"],[33,"pressure"],[34,"vapour_pressure"],[35,"altitude"],[36,"density"],[37,"specific_heat"],[38,"enthalpy"],[39,"latent_heat"],[40,"heat_capacity"],[41,"vessel_mass"],[42,"cooling_rate"],[43,"humidity"],[44,"diameter"],[45,"brix"],[46,"refractive_index"],[47,"refractive_factor"],[48,"sample_temperature"],[49,"repeatability"],[50,"milk_solids"],[51,"caffeine_content"],[52,"caffeine"],[53,"spent_moisture"],[54,"servings"],[55,"batches"],[56,"reading_count"],[57,"rest"],[58,"body_count"],[59,"mass_uncertainty"],[60,"strength_uncertainty"],[61,"yield_uncertainty"],[62,"share_uncertainty"],[63,"temperature_uncertainty"],[64,"water_solids_uncertainty"],[65,"retention_uncertainty"],[66,"span_uncertainty"],[67,"factor_uncertainty"],[68,"measurand"],[69,"standard_uncertainty"],[70,"sensitivity"],[71,"degrees_of_freedom"],[72,"doubt"],[73,"confidence"],[74,"probability"],[75,"coverage_factor"],[76,"correlation"],[77,"term_count"],[78,"repeat_count"],[80,"measurements"],[81,"fitted_hold_up"],[82,"cup_number"],[83,"heat_capacity_uncertainty"],[84,"cooling_rate_uncertainty"],[85,"time_constant_uncertainty"],[90,"brix_uncertainty"],[91,"time_uncertainty"],[100,"clock"],[101,"scale_reading"],[102,"division"],[103,"capacity"],[104,"fastest_pour"],[105,"flow"],[106,"poured"],[107,"change"],[108,"unclear"],[109,"lead"],[110,"flow_variation"],[111,"level"],[112,"step_count"]]);

/** What can stand in the way of a wish: keys by their lasting codes. */
export const limitKeys = [null,"adding_water_weakens","no_water_is_enough","boiling_point","chamber","coffee_gives_no_more","brew_on_hand","heat_left","surroundings","ice_and_heat","equilibrium_yield"];

/** What can stand in the way of a wish, in plain words. */
export const limitTexts = Object.freeze({
  adding_water_weakens: "adding water only weakens",
  boiling_point: "even boiling water does not arrive so hot",
  brew_on_hand: "there is not enough brew",
  chamber: "the chamber does not hold it",
  coffee_gives_no_more: "the coffee gives no more at the yield expected",
  equilibrium_yield: "extraction levels off below that",
  heat_left: "the drink is not that hot when it is made",
  ice_and_heat: "ice and heat do not balance there",
  no_water_is_enough: "no amount of this water brings it so low",
  surroundings: "the room does not cool it so far",
});

/** Why measurements cannot tell: keys by their lasting codes. */
export const untoldKeys = [null,"too_few","one_dose","no_span","still_rising","levelled_off","one_rate","falling","not_cooling"];

/** Why measurements cannot tell, in plain words. */
export const untoldTexts = Object.freeze({
  falling: "the yield falls with time, which no extraction does",
  levelled_off: "the yield has levelled off at the shortest contact",
  no_span: "nothing varies that would tell it",
  not_cooling: "the readings do not fall as a cooling cup's do",
  one_dose: "one dose size shows only what is kept in all",
  one_rate: "one rate describes them as well as two",
  still_rising: "the yield does not level off before the longest contact",
  too_few: "there are too few",
});

/** What is wanting then, in plain words. */
export const wantingTexts = Object.freeze({
  falling: "yield after the longest contact in %",
  levelled_off: "measurements before half the shortest contact",
  no_span: "it spans",
  not_cooling: "cooling rate in 1/min",
  one_dose: "gap between doses in g",
  one_rate: "F of the second rate",
  still_rising: "longest contact in s",
  too_few: "measurements",
});

/** What can hurt: keys by their lasting codes. */
export const cautionKeys = [null,"scald","very_hot_drink","pressing","glass_shock","caffeine","milk","ice"];

/** What can hurt, in plain words. */
export const cautionTexts = Object.freeze({
  caffeine: "More caffeine in this serving than the 200 mg that single doses for healthy adults are rated at (EFSA 2015). People who are pregnant, young, or under medical care need other limits: ask a doctor or pharmacist.",
  glass_shock: "Glass can break when heated or chilled suddenly, scratched glass sooner. Use glass made for it, warm it gradually, and never pour cold into hot glass. The maker's limits come first.",
  ice: "Ice is food: make it from drinking water, handle it with a scoop, and follow local food rules for chilled drinks.",
  milk: "Milk is perishable and an allergen. Keep it cold, do not reuse what has been warmed, and follow local food rules.",
  pressing: "Pressing hot liquid by hand: a slipping seal can spray it far. Stand the brewer on a firm, heat-proof vessel, press slowly and straight, never lean on it, stop when it resists or when you hear air. The maker's instructions come first.",
  scald: "Hot enough to burn skin within seconds, children faster than adults. Keep it away from edges and elbows. Follow your local codes and the equipment's instructions; get medical help for a burn.",
  very_hot_drink: "Hotter than 65 °C to drink. Very hot drinks are classed as probably carcinogenic to the oesophagus (IARC Monograph 116). Let it cool before serving or say so to the guest.",
});

/** What goes on on a scale, in plain words. */
export const doingTexts = Object.freeze({
  disturbed: "something moves",
  dripping: "water drips",
  overloaded: "more than the scale can weigh",
  pouring: "water is poured",
  pressed: "a hand presses",
  settling: "the water comes to rest",
  still: "still",
});

/** What happens on a scale, in plain words. */
export const happeningTexts = Object.freeze({
  disturbed: "something moved",
  drifted: "the reading has drifted",
  drip_started: "water began to drip",
  drip_stopped: "water no longer drips",
  lifted: "something was taken off",
  lost: "no readings came for a while",
  overloaded: "more than the scale can weigh",
  placed: "something was put down",
  pour_started: "a pour began",
  pour_stopped: "a pour ended",
  pressed: "a hand presses",
  released: "the hand let go",
  restless: "the reading does not come to rest",
  returned: "what was taken off is back",
  settled: "the water has come to rest",
  tared: "the display was set to zero",
  unclear: "water, or something else",
});

/** The steps of a recipe, in plain words. */
export const stepTexts = Object.freeze({
  beverage: "weigh what has come out",
  dose: "weigh the coffee",
  pour: "pour water",
  press: "press, or let it drain",
  rinse: "rinse the paper",
  stir: "stir",
  wait: "wait",
});

/** What to do, in plain words. */
export const cueTexts = Object.freeze({
  add_coffee: "add coffee",
  nothing: "nothing to do",
  pour: "pour",
  press: "press",
  rinse: "rinse the paper",
  stir: "stir",
  stop_pouring: "stop pouring",
  wait: "wait",
  weigh_beverage: "weigh what has come out",
});

/** Why a cue is given, in plain words. */
export const whyTexts = Object.freeze({
  done: "nothing is left to do",
  early: "it is too early for what comes next",
  enough: "there is enough",
  lead: "what still falls makes up the rest",
  missing: "some is still missing",
  next: "it is next",
  time: "it is time",
  too_much: "there is too much",
  unclear: "the scale cannot tell how much water there is",
});

/** Constants with their sources. */
export const constants = Object.freeze({
  ALTITUDE_ONLY_UNCERTAINTY_K: {"about":"How far weather may move the boiling point from the one an altitude alone gives, K. 0.277 K per kPa times a day's ±2.5 kPa (the swing is an estimate).","value":0.7},
  ALUMINIUM_J_PER_G_K: {"about":"Specific heat of aluminium, J/(g K). Source: EN 12524 alloys 0.88; handbook 0.897; alloy 6061 0.896.","value":0.9},
  BOROSILICATE_GLASS_J_PER_G_K: {"about":"Specific heat of borosilicate glass, J/(g K). Source: Callister 0.85; a properties table 0.84; an engineering data handbook 0.753.","value":0.83},
  COPOLYESTER_J_PER_G_K: {"about":"Specific heat of copolyester, J/(g K). Source: estimate, ±0.2, from PET 1.0 to 1.25 and polycarbonate.","value":1.3},
  DAILY_CAFFEINE_MG: {"about":"\"Up to 400 mg per day does not give rise to safety concerns for non-pregnant adults\": the same opinion, as reported by a law digest. The digests give 200 mg a day in pregnancy.","value":400.0},
  DRY_FILTER_PAPER_J_PER_G_K: {"about":"Specific heat of dry filter paper, J/(g K). Source: Wood Handbook 2010: 0.1031 + 0.003867 T/K, 1.24 at 20 °C to 1.51 at 90 °C.","value":1.34},
  DUMP_DROP_K: {"about":"Heat lost by water dumped in at once. Estimate, ±50 %.","value":0.4},
  EQUILIBRIUM_YIELD_PCT: {"about":"Yield at which a full steep levels off: \"approximately 21 % over a wide range of brew ratios\", 80 to 99 °C, any grind (Liang, Chan & Ristenpart 2021, abstract). One coffee's own may differ; pass it instead where it is known.","value":21.0},
  GROUNDS_J_PER_G_K: {"about":"Specific heat of roasted ground coffee, 1.6 ± 0.3 J/(g K). Estimate, between composition formulas (1.4 to 1.9); the uncertainty moves a 1:16 brew by 0.4 K.","value":1.6},
  MILK_J_PER_G_K: {"about":"Specific heat of milk, J/(g K): 3.89 whole, 3.97 skim (Choi–Okos composition; 3.85 and 3.98 to 4.02 in Geankoplis, table A.4). The mean is used.","value":3.93},
  NEAR_LIMIT_POINTS: {"about":"How near, in points of yield, counts as near the limit. Estimate.","value":2.0},
  OPEN_CUP_K_PER_KPA: {"about":"Weight of the vapour term against the temperature term for an open cup, K/kPa. Chosen on five measured cooling curves and one computed one; anything from 4 to 10 stays within 1.2 K over half an hour once the rate is calibrated. Estimate.","value":6.0},
  OPEN_CUP_W_PER_M2_KPA: {"about":"Heat that leaves an open cup with its vapour, W per m² of surface and kPa. Estimate, fitted here.","value":218.0},
  POLYCARBONATE_J_PER_G_K: {"about":"Specific heat of polycarbonate, J/(g K). Source: EN 12524 1.2; Crawford 1.2.","value":1.2},
  POLYPROPYLENE_J_PER_G_K: {"about":"Specific heat of polypropylene, J/(g K). Source: EN 12524 1.8; Crawford 2.0; a materials table 1.7.","value":1.8},
  PORCELAIN_OR_STONEWARE_J_PER_G_K: {"about":"Specific heat of porcelain or stoneware, J/(g K). Source: EN 12524 tile 0.84; clay and pottery 0.92; a materials table 1.05.","value":0.9},
  SCALDING_C: {"about":"From here a serious burn takes ten seconds or less; see time_to_burn.","value":57.0},
  SILICONE_RUBBER_J_PER_G_K: {"about":"Specific heat of silicone rubber, J/(g K). Source: EN 12524 1.0; rounded up, estimate.","value":1.1},
  SINGLE_DOSE_CAFFEINE_MG: {"about":"\"Single doses of caffeine up to 200 mg … do not give rise to safety concerns\" for healthy adults: EFSA Journal 2015;13(5):4102.","value":200.0},
  SODA_LIME_GLASS_J_PER_G_K: {"about":"Specific heat of soda-lime glass, J/(g K). Source: Callister 0.84; a properties table 0.82; EN 12524 0.75.","value":0.84},
  SOLUBLE_LIMIT_HIGH_PCT: {"about":"Highest of the limits in that range; Lockhart 1957 is quoted with 32 %, and with 36, 30 and 29 % for complete extraction of three origins.","value":32.0},
  SOLUBLE_LIMIT_LOW_PCT: {"about":"Lowest published limit of what hot water dissolves from roasted coffee: 28 to 32 % for fine and coarse grinds (trade-education text quoting \"recent experiments\"); \"roughly 30 %\" (ITC Coffee Guide, Q&A 064).","value":28.0},
  STAINLESS_STEEL_J_PER_G_K: {"about":"Specific heat of stainless steel, J/(g K). Source: EN 12524 0.46; Crawford 0.49; a materials table 0.50.","value":0.5},
  SUSPICIOUS_CHANCE: {"about":"Below this chance a measurement is called suspicious. Common practice.","value":0.05},
  THIN_STREAM_DROP_K: {"about":"Heat lost by a thin stream of a few grams a second over 10 to 15 cm. Estimate, ±50 %.","value":1.0},
  USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX: {"about":"The usual factor from degrees Brix to coffee strength, 0.85. Weak basis: trade convention found only in notes that were not peer-reviewed; a textbook's espresso data imply 1.15 to 1.50 for total solids. Calibrate against oven-dried samples where it matters. An uncertainty of 0.02 is common to all readings of one coffee, so it hardly touches the difference of two brews.","value":0.85},
  VERY_HOT_DRINK_C: {"about":"Above this a drink counts as very hot: IARC Monograph 116 (2016), as reported.","value":65.0},
});

/** Published windows with their sources. */
export const windows = Object.freeze({
  golden_cup_2015: {"source":"SCAA Standard \"Golden Cup\", revision of 23 December 2015","window":{"strength_highest_pct":1.35,"strength_lowest_pct":1.15,"yield_counting":"flow_through","yield_highest_pct":22.0,"yield_lowest_pct":18.0}},
  home_brewer_2018: {"source":"SCA certified home brewer program, news of 22 April 2018","window":{"strength_highest_pct":1.45,"strength_lowest_pct":1.15,"yield_counting":"flow_through","yield_highest_pct":22.0,"yield_lowest_pct":18.0}},
});
