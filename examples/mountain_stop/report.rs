//! The report: what to do, what to expect, what was brewed and what to make of it.

use std::fmt::{Arguments, Display, Write};

use cupwright::Error;
use cupwright::caution::{self, Caution, TimeToBurn};
use cupwright::error::Limit;
use cupwright::extraction::{self, Brew, Credibility, Plausibility};
use cupwright::plan::{self, Coffee, ContactHeat, Recipe, Wish};
use cupwright::quantity::*;
use cupwright::reading::{self, Agreement};
use cupwright::verdict::{self, Counting, Place, Side, Standing, Window};
use cupwright::{dilution, retention};
use toml::Spanned;

use crate::scenario::{Fault, Instrument, MeasuredBrew, Scenario, Setting};
use crate::surety;

pub type Text = String;

/// The whole report.
pub fn of(scenario: &Scenario) -> Result<Text, Fault> {
    let mut out = Text::new();
    let mut cautions = Vec::new();
    line(&mut out, format_args!("{}", scenario.place));

    for wish in &scenario.wishes {
        let setting = scenario.setting(wish.as_ref())?;
        heading(&mut out, &format!("{}: the recipe", setting.name));
        plan_for_wish(&mut out, scenario.instrument.as_ref(), &setting, &mut cautions)
            .map_err(|error| Fault::about(wish.span(), setting.drink.field_of(&error), error))?;
    }
    for brew in &scenario.brews {
        let setting = scenario.setting(scenario.wish_of(brew.as_ref())?)?;
        heading(&mut out, &format!("{}: what was brewed", setting.name));
        match judge(&mut out, scenario.instrument.as_ref(), &setting, brew) {
            Ok(()) => {}
            Err(refused @ Error::OutOfRange { quantity: Quantity::ReadingCount, .. }) => {
                return Err(Fault::about(brew.span(), Some("readings_pct"), refused));
            }
            // Each number is possible, what follows from them is not.
            Err(refused) => item(
                &mut out,
                "cannot be",
                format_args!("{refused}. Look for a slip in what was weighed or read."),
            ),
        }
    }

    heading(&mut out, "Take care");
    cautions.sort();
    cautions.dedup();
    for caution in cautions {
        wrapped(&mut out, caution.words());
    }
    wrapped(
        &mut out,
        "Local codes, the equipment's instructions and licensed practice come before this page.",
    );
    Ok(out)
}

// ---- Before the brew ------------------------------------------------------------------------------

fn plan_for_wish(
    out: &mut Text,
    instrument: Option<&Instrument>,
    setting: &Setting<'_>,
    cautions: &mut Vec<Caution>,
) -> Result<(), Error> {
    let (drink, recipe) = feasible(out, setting)?;
    wish_line(out, &drink);
    write_recipe(out, &recipe, &drink);
    write_heat(out, &recipe, &drink);
    write_kept(out, setting, &recipe)?;
    write_tolerances(out, &recipe);
    if let Some(instrument) = instrument {
        surety::write_chance(out, instrument, setting, &drink)?;
    }
    cautions.extend(recipe.cautions.iter());

    let cups = drink.servings.count() * 2.0;
    let twice = Servings::from_count(cups).and_then(|servings| {
        let double = Wish { servings, ..drink };
        plan::recipe(&double, setting.brewer, setting.coffee, setting.kitchen)
    });
    let label = format!("for {cups:.0} cups");
    match twice {
        Ok(twice) => item(
            out,
            &label,
            format_args!(
                "{} of coffee and {} of water{}; contact unchanged",
                twice.dose,
                twice.water,
                in_batches(&twice),
            ),
        ),
        Err(refused) => item(out, &label, format_args!("not so: {refused}")),
    }
    Ok(())
}

/// The recipe for a wish; where the wish cannot be met, the reason and the recipe for the nearest.
fn feasible(out: &mut Text, setting: &Setting<'_>) -> Result<(Wish, Recipe), Error> {
    let mut drink = setting.drink;
    loop {
        let refused = match plan::recipe(&drink, setting.brewer, setting.coffee, setting.kitchen) {
            Ok(recipe) => return Ok((drink, recipe)),
            Err(refused) => refused,
        };
        let nearest = nearest(&drink, refused)?;
        // A nearest that changes nothing would go round for ever.
        if nearest == drink {
            return Err(refused);
        }
        drink = nearest;
        wrapped(out, &format!("Not quite as wished. {}", in_words(refused)));
        let inside = |window: &Window| window.strength.place(drink.strength).side == Side::Inside;
        if drink.window.as_ref().is_some_and(|window| !inside(window)) {
            drink.window = None;
            wrapped(out, "That lies outside the window wished, which is set aside.");
        }
    }
}

/// The wish with the one value replaced that could not be met.
fn nearest(drink: &Wish, refused: Error) -> Result<Wish, Error> {
    let Error::Infeasible { nearest, limit, .. } = refused else { return Err(refused) };
    Ok(match limit {
        Limit::BoilingPoint => {
            Wish { brew_temperature: Temperature::from_celsius(nearest)?, ..*drink }
        }
        Limit::HeatLeft | Limit::Surroundings => {
            Wish { serve_at: Some(Temperature::from_celsius(nearest)?), ..*drink }
        }
        Limit::Chamber => Wish { cup: Beverage::from_grams(nearest)?, ..*drink },
        Limit::CoffeeGivesNoMore if drink.brew_strength.is_some() => {
            Wish { brew_strength: Some(Strength::from_percent(nearest)?), ..*drink }
        }
        Limit::CoffeeGivesNoMore | Limit::AddingWaterWeakens | Limit::NoWaterIsEnough => {
            Wish { strength: Strength::from_percent(nearest)?, ..*drink }
        }
        _ => return Err(refused),
    })
}

/// What was refused and what stands in its place, to the decimals that a person wants.
fn in_words(refused: Error) -> String {
    match refused {
        Error::Infeasible { wish, value, nearest, limit } => {
            let (name, unit, decimals) = (wish.name(), wish.unit(), wish.decimals());
            format!(
                "{name} {value:.decimals$} {unit}: {limit}. Planned with {nearest:.decimals$} {unit}."
            )
        }
        other => other.to_string(),
    }
}

fn wish_line(out: &mut Text, drink: &Wish) {
    item(
        out,
        "wanted",
        format_args!(
            "{:.0} × {:.0} at {}, water meeting the coffee at {}, contact {}",
            drink.servings,
            drink.cup,
            drink.strength,
            drink.brew_temperature,
            clock(drink.contact),
        ),
    );
}

fn in_batches(recipe: &Recipe) -> String {
    match recipe.batches.count() {
        1.0 => String::new(),
        n => format!(", {n:.0} times over"),
    }
}

fn write_recipe(out: &mut Text, recipe: &Recipe, drink: &Wish) {
    item(
        out,
        "weigh",
        format_args!(
            "{} of coffee and {} of water{} (1 : {:.1})",
            recipe.dose,
            recipe.water,
            in_batches(recipe),
            recipe.ratio.grams_per_gram(),
        ),
    );
    item(
        out,
        "expect",
        format_args!(
            "{} of brew at {}, counting on a yield of {:.1}",
            recipe.beverage, recipe.brew_strength, recipe.expected,
        ),
    );
    if recipe.added_per_cup.grams() > 0.0 {
        item(
            out,
            "in each cup",
            format_args!(
                "{} of brew and {} of water make {} at {}",
                recipe.brew_per_cup, recipe.added_per_cup, drink.cup, recipe.strength,
            ),
        );
    }
    if let Some(fill) = recipe.fill {
        item(out, "chamber", format_args!("{fill:.0} of water and grounds"));
    }
}

fn write_heat(out: &mut Text, recipe: &Recipe, drink: &Wish) {
    let heat = &recipe.heat;
    let sure = if heat.boiling_uncertainty_k > 0.0 {
        format!(" ± {} K, by altitude alone", heat.boiling_uncertainty_k)
    } else {
        " by the barometer".to_string()
    };
    item(out, "water boils at", format_args!("{}{sure}", heat.boiling));
    let mut steps = vec![format!("kettle {}", heat.kettle)];
    if let Some(second) = heat.second_vessel {
        steps.push(format!("second vessel {second}"));
    }
    let most = if heat.contact == ContactHeat::AtMost { "at most " } else { "" };
    steps.extend([
        format!("brewer {:.0}", heat.brewer),
        format!("at the grounds {}", heat.at_grounds),
        format!("slurry {}", heat.slurry),
        format!("after contact {most}{}", heat.slurry_end),
        format!("in the cup {most}{}", heat.in_cup),
    ]);
    // A number and its unit stay on one line.
    let steps = steps.join(" > ").replace(" °C", "\u{a0}°C");
    item(out, "heat walk", format_args!("{steps}"));
    if let Some(serve_at) = drink.serve_at {
        match heat.wait {
            Some(wait) => item(
                out,
                "hand over",
                format_args!("at {serve_at:.0}, after {most}{}", clock(wait)),
            ),
            None => item(
                out,
                "hand over",
                format_args!(
                    "at {serve_at:.0}; how long that takes is not known, nor the cup's cooling"
                ),
            ),
        }
    }
    let served = heat.wait.and(drink.serve_at).unwrap_or(heat.in_cup);
    let burns = match caution::time_to_burn(served) {
        TimeToBurn::Within(time) => format!("within {time}"),
        TimeToBurn::UnderOneSecond => "in under a second".to_string(),
        _ => return,
    };
    item(out, "on skin", format_args!("at {served:.0} it burns {burns}"));
}

fn write_kept(out: &mut Text, setting: &Setting<'_>, recipe: &Recipe) -> Result<(), Error> {
    let losses = &setting.brewer.losses;
    let brew = brew_of(setting, recipe.dose, recipe.water, recipe.beverage);
    let kept = extraction::retained_liquid(&brew, recipe.expected)?;
    let held = retention::true_retention(
        losses.retention,
        recipe.expected,
        setting.coffee.moisture,
        Vapour::NONE,
        recipe.dose,
    )?;
    item(
        out,
        "stays behind",
        format_args!(
            "{kept} of liquid, {held} of coffee in the grounds and the rest in chamber and drips",
        ),
    );
    Ok(())
}

fn write_tolerances(out: &mut Text, recipe: &Recipe) {
    if let (Some(edges), Some(standing)) = (recipe.tolerances, recipe.standing) {
        item(
            out,
            "in the window",
            format_args!(
                "as long as the dose alone stays {}, or the water alone {}, the yield unchanged; the \
                 reading may be {:.2} points low or {:.2} high",
                between(edges.dose_from, edges.dose_to),
                between(edges.water_from, edges.water_to),
                standing.strength.above_lowest,
                standing.strength.below_highest,
            ),
        );
        if let Some(extracted) = standing.extracted.filter(|p| p.side != Side::Inside) {
            item(out, "", format_args!("but the yield counted on is {}", place(&extracted)));
        }
    }
    if let Some(caffeine) = recipe.caffeine {
        item(out, "caffeine", format_args!("{caffeine} a cup at most"));
    }
}

fn between<M: Display>(from: Option<M>, to: Option<M>) -> String {
    match (from, to) {
        (Some(from), Some(to)) => format!("between {from} and {to}"),
        (Some(from), None) => format!("above {from}"),
        (None, Some(to)) => format!("below {to}"),
        (None, None) => "within reason".to_string(),
    }
}

// ---- After the brew -------------------------------------------------------------------------------

/// A brew of this setting, for the mass balance.
fn brew_of(setting: &Setting<'_>, dose: Dose, water: BrewWater, beverage: Beverage) -> Brew {
    Brew {
        dose,
        water,
        beverage,
        moisture: setting.coffee.moisture,
        water_solids: setting.kitchen.water_solids,
        vapour: setting.brewer.losses.vapour,
        held_strength: setting.brewer.held_strength,
    }
}

fn judge(
    out: &mut Text,
    instrument: Option<&Instrument>,
    setting: &Setting<'_>,
    measured: &Spanned<MeasuredBrew>,
) -> Result<(), Error> {
    let measured = measured.as_ref();
    item(
        out,
        "weighed",
        format_args!(
            "{} of coffee, {} of water, {} in the cup",
            measured.dose, measured.water, measured.beverage,
        ),
    );
    let strength = write_readings(out, setting, measured)?;
    let Some(strength) = strength else {
        return Ok(());
    };

    let brew = brew_of(setting, measured.dose, measured.water, measured.beverage);
    let judged = extraction::plausibility(&brew, strength)?;
    write_yield(out, setting, &brew, &judged, strength);
    if let Some(window) = setting.drink.window {
        // A brew meant for dilution is judged as the drink that water makes of it.
        let diluted = setting.drink.brew_strength.is_some() && strength > setting.drink.strength;
        let drunk = if diluted { setting.drink.strength } else { strength };
        let label = if diluted { "with water added" } else { "in the window" };
        let counted = match window.counting {
            Counting::FlowThrough => {
                extraction::flow_through_yield(strength, brew.beverage, brew.dose)?
            }
            _ => judged.extracted,
        };
        write_standing(out, label, &window, &verdict::stand(&window, drunk, counted));
    }
    if let Some(instrument) = instrument {
        surety::write_worth(out, instrument, setting, measured, &brew)?;
    }
    write_addition(out, setting, &brew, strength)?;
    write_next(out, setting, &brew, &judged)
}

/// The readings as one strength of all solids, or none if another reading is needed.
fn write_readings(
    out: &mut Text,
    setting: &Setting<'_>,
    measured: &MeasuredBrew,
) -> Result<Option<Strength>, Error> {
    let read = reading::combine(&measured.readings, measured.repeatability)?;
    let shown: Vec<_> = measured.readings.iter().map(|r| format!("{:.2}", r.percent())).collect();
    let because = match read.critical_range_pct {
        Some(critical) => {
            format!("they differ by {:.2}, up to {critical:.3} is accepted", read.range_pct)
        }
        None => "a single reading proves nothing".to_string(),
    };
    item(out, "read", format_args!("{} % ({because})", shown.join(", ")));
    match read.agreement {
        Agreement::TakeAnother => {
            wrapped(
                out,
                "Take another reading: swirl, filter, zero at the sample's temperature, wait. Until \
                 they agree they are no value, and nothing further would be worth having.",
            );
            return Ok(None);
        }
        Agreement::Median => wrapped(
            out,
            "The readings do not agree; going on with their median. Look for a warm sample, a \
             bubble or an unfiltered drop.",
        ),
        _ => {}
    }
    let water = setting.kitchen.water_solids;
    let total = reading::total_strength(read.value, measured.zero, water)?;
    let coffee = reading::coffee_strength(read.value, measured.zero, water)?;
    item(out, "strength", format_args!("{total:.3} in all, {coffee:.3} of it coffee"));
    Ok(Some(total))
}

fn write_yield(
    out: &mut Text,
    setting: &Setting<'_>,
    brew: &Brew,
    judged: &Plausibility,
    strength: Strength,
) {
    let held = brew.held_strength;
    let others: Vec<_> = [HeldStrength::FLOWED_THROUGH, HeldStrength::STEEPED]
        .into_iter()
        .filter(|end| *end != held)
        .filter_map(|end| {
            let other = Brew { held_strength: end, ..*brew };
            let extracted = extraction::extraction_yield(&other, strength).ok()?;
            Some(format!("{extracted} at {end:.0}"))
        })
        .collect();
    item(
        out,
        "yield",
        format_args!(
            "{} with the kept liquid at {held:.0} of the cup's strength ({})",
            judged.extracted,
            others.join(", "),
        ),
    );
    let doubt = match judged.credibility {
        Credibility::Ordinary => return,
        Credibility::NearLimit => "close to",
        Credibility::AtLimit => "at",
        _ => "beyond",
    };
    wrapped(
        out,
        &format!(
            "Doubt it before you enjoy it: that is {doubt} all that hot water is known to dissolve \
             ({:.0} to {:.0}). For an ordinary yield of {:.0} % one of these would have to differ:",
            extraction::SOLUBLE_LIMIT_LOW,
            extraction::SOLUBLE_LIMIT_HIGH,
            extraction::SOLUBLE_LIMIT_LOW.percent() - extraction::NEAR_LIMIT_POINTS,
        ),
    );
    for doubt in judged.doubts.iter().flatten() {
        let quantity = doubt.quantity;
        let decimals = quantity.decimals();
        let unit = quantity.unit();
        match doubt.would_have_to_be {
            Some(value) => line(
                out,
                format_args!(
                    "    {:<15} {:.decimals$} {unit}, and you have {:.decimals$} {unit}",
                    quantity.name(),
                    value,
                    doubt.entered,
                ),
            ),
            None => line(out, format_args!("    {:<15} no value does it alone", quantity.name())),
        }
    }
    if setting.brewer.held_strength == HeldStrength::STEEPED {
        wrapped(
            out,
            "Usual causes: a sample that was not filtered or had dried, a refractive factor that \
             does not suit this coffee, water that was not all weighed, a steep that was not mixed.",
        );
    }
}

fn write_standing(out: &mut Text, label: &str, window: &Window, standing: &Standing) {
    item(out, label, format_args!("strength {}", place(&standing.strength)));
    match (&standing.extracted, window.counting) {
        (None, _) => {}
        (Some(_), Counting::NotStated) => {
            item(
                out,
                "",
                format_args!("yield not judged: the window does not say how to count it"),
            );
        }
        (Some(extracted), Counting::FlowThrough) => {
            item(out, "", format_args!("yield as the chart counts it {}", place(extracted)));
        }
        (Some(extracted), _) => item(out, "", format_args!("yield {}", place(extracted))),
    }
}

fn place(place: &Place) -> String {
    match place.side {
        Side::Below => format!("below, by {:.2} points", -place.above_lowest),
        Side::Above => format!("above, by {:.2} points", -place.below_highest),
        _ => format!(
            "inside, {:.2} points above the lower edge and {:.2} below the upper",
            place.above_lowest, place.below_highest
        ),
    }
}

/// What to add to this cup.
fn write_addition(
    out: &mut Text,
    setting: &Setting<'_>,
    brew: &Brew,
    strength: Strength,
) -> Result<(), Error> {
    let wanted = setting.drink.strength;
    match dilution::water_to_reach(brew.beverage, strength, wanted, brew.water_solids) {
        Ok(added) => {
            item(
                out,
                "to this brew",
                format_args!(
                    "add {added} of water for {wanted}, {:.0} g to drink",
                    brew.beverage.grams() + added.grams(),
                ),
            );
        }
        Err(error @ Error::Infeasible { .. }) => {
            item(out, "to this brew", format_args!("nothing: {error}"));
        }
        Err(error) => return Err(error),
    }
    Ok(())
}

/// The next recipe, with the yield and the retention that this brew showed.
fn write_next(
    out: &mut Text,
    setting: &Setting<'_>,
    brew: &Brew,
    judged: &Plausibility,
) -> Result<(), Error> {
    if judged.credibility != Credibility::Ordinary {
        item(
            out,
            "next time",
            format_args!("settle the doubt first: brew and read again as before"),
        );
        return Ok(());
    }
    let losses = retention::Losses {
        retention: retention::retention_of_brew(
            &setting.brewer.losses,
            brew.dose,
            brew.water,
            brew.beverage,
        )?,
        ..setting.brewer.losses
    };
    let brewer = plan::Brewer { losses, ..*setting.brewer };
    let coffee = Coffee { expected: judged.extracted, ..*setting.coffee };
    // From the wish as it could be planned; what cannot be had this time is said.
    let (drink, _) = feasible(&mut Text::new(), setting)?;
    let learned = Setting { drink, brewer: &brewer, coffee: &coffee, ..*setting };
    let (_, recipe) = feasible(out, &learned)?;
    item(
        out,
        "next time",
        format_args!(
            "{} of coffee and {} of water{}, if it yields and keeps ({}) as this one did",
            recipe.dose,
            recipe.water,
            in_batches(&recipe),
            losses.retention,
        ),
    );
    Ok(())
}

// ---- Lines ----------------------------------------------------------------------------------------

const WIDTH: usize = 96;

/// A labelled item, broken at [`WIDTH`].
pub fn item(out: &mut Text, label: &str, words: Arguments<'_>) {
    wrapped_after(out, &format!("  {label:<17} "), &words.to_string());
}

fn line(out: &mut Text, arguments: Arguments<'_>) {
    // Writing to a String cannot fail.
    let _ = writeln!(out, "{arguments}");
}

fn heading(out: &mut Text, words: &str) {
    let _ = writeln!(out, "\n{words}\n{}", "-".repeat(words.chars().count()));
}

/// A paragraph, indented and broken at [`WIDTH`].
fn wrapped(out: &mut Text, words: &str) {
    wrapped_after(out, "  ", words);
}

/// A paragraph after a label, broken at [`WIDTH`] and indented by the label's width.
fn wrapped_after(out: &mut Text, label: &str, words: &str) {
    let indent = label.chars().count();
    let mut row = label.to_string();
    let mut used = indent;
    for word in words.split(' ') {
        let long = word.chars().count();
        if used > indent && used + 1 + long > WIDTH {
            let _ = writeln!(out, "{row}");
            row = " ".repeat(indent);
            used = indent;
        }
        if used > indent {
            row.push(' ');
            used += 1;
        }
        row.push_str(word);
        used += long;
    }
    let _ = writeln!(out, "{row}");
}

/// Minutes and seconds.
pub fn clock(time: Time) -> String {
    let seconds = time.seconds().round();
    format!("{:.0}:{:02.0}", (seconds / 60.0).floor(), seconds % 60.0)
}
