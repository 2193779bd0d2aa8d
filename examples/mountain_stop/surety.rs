//! How sure the report is: chances before a brew; after it, what its numbers are worth, and what to do.

use cupwright::Error;
use cupwright::advise::{self, Change, Cup, Direction, Means, Suggestion};
use cupwright::decision::{self, Decision, Needed};
use cupwright::extraction::Brew;
use cupwright::plan::{self, Wish};
use cupwright::quantity::*;
use cupwright::reading::{self, Agreement};
use cupwright::uncertainty::{
    self, Budget, Estimate, Measured, ReadStrength, Series, Shape, Standard, Uncertain, Uncertainty,
};
use cupwright::verdict::{Band, Counting, Window};

use crate::report::{Text, clock, item};
use crate::scenario::{Instrument, MeasuredBrew, Setting};

/// How sure is sure: common practice.
const SURE: f64 = 95.0;

/// The chance that a recipe lands in its window's strengths, and the strength that does so most surely.
pub fn write_chance(
    out: &mut Text,
    instrument: &Instrument,
    setting: &Setting<'_>,
    drink: &Wish,
) -> Result<(), Error> {
    let Some(window) = drink.window else { return Ok(()) };
    let (brewer, coffee, kitchen) = (setting.brewer, setting.coffee, setting.kitchen);
    let straying = &instrument.straying;
    let seen = plan::foreseen(drink, brewer, coffee, kitchen, straying)?;
    let surest = plan::surest(drink, brewer, coffee, kitchen, straying)?;
    let (Some(outlook), Some(best)) = (seen.outlook, surest.outlook) else { return Ok(()) };
    let sure = Confidence::from_percent(SURE)?;
    let mut words = format!(
        "{} at {} ± {:.2}: inside the window{} {:.0} times in 100",
        range(&outlook.beverage, sure)?,
        outlook.strength.value,
        outlook.strength.expanded(sure)?.half_width.percent(),
        if is_yield_judged(&window) { ", yield and all," } else { "'s strengths" },
        outlook.inside.percent(),
    );
    if surest.recipe != seen.recipe {
        words += &format!(
            "; {} of coffee for {} would be so {:.0} times",
            surest.recipe.dose,
            surest.recipe.strength,
            best.inside.percent(),
        );
    }
    item(out, "by this hand", format_args!("{words}"));
    Ok(())
}

/// Whether a window judges a yield.
fn is_yield_judged(window: &Window) -> bool {
    window.extracted.is_some() && window.counting != Counting::NotStated
}

/// A value and how far it reaches, "190 g ± 4".
fn range<M: Uncertain + std::fmt::Display>(
    estimate: &Estimate<M>,
    sure: Confidence,
) -> Result<String, Error> {
    let half = estimate.expanded(sure)?.half_width.value();
    let decimals = M::QUANTITY.decimals();
    Ok(format!("{:.decimals$} ± {half:.decimals$} {}", estimate.value.value(), M::QUANTITY.unit()))
}

/// What the numbers of a brew are worth: value and uncertainty, what that rests on, what is decided, and
/// what could be done about this cup and the next.
pub fn write_worth(
    out: &mut Text,
    instrument: &Instrument,
    setting: &Setting<'_>,
    measured: &MeasuredBrew,
    brew: &Brew,
) -> Result<(), Error> {
    let sure = Confidence::from_percent(SURE)?;
    let strength = strength_of(instrument, setting, measured)?;
    let extracted = yield_of(instrument, brew, &strength.estimate)?;
    item(
        out,
        "how sure",
        format_args!(
            "strength {}, yield {}, 95 times in 100",
            range(&strength.estimate, sure)?,
            range(&extracted.estimate, sure)?,
        ),
    );
    rests_on(out, "rests on", &strength, sure)?;
    rests_on(out, "", &extracted, sure)?;
    if let Some(window) = setting.drink.window.filter(|_| setting.drink.brew_strength.is_none()) {
        let repeats = Some((own_scatter(measured), measured));
        decided(out, "decided", &strength.estimate, &window.strength, sure, repeats)?;
        if let Some(band) = window.extracted.as_ref().filter(|_| is_yield_judged(&window)) {
            let counted = match window.counting {
                Counting::FlowThrough => by_chart(instrument, brew, &strength.estimate)?,
                _ => extracted,
            };
            decided(out, "", &counted.estimate, band, sure, None)?;
            let correlation = counted.correlation_with_strength();
            let both = decision::joint(
                &strength.estimate,
                &counted.estimate,
                correlation,
                &window.strength,
                band,
            );
            item(out, "", format_args!("both inside with {:.0}", both.both));
        }
        suggestions(out, instrument, setting, brew, &strength.estimate, &extracted.estimate)?;
    }
    Ok(())
}

/// The scatter of one reading.
fn own_scatter(measured: &MeasuredBrew) -> Series<StrengthUncertainty> {
    // How uncertain it is itself, its degrees of freedom say.
    let doubt = Standard { u: StrengthUncertainty::NONE, freedom: measured.repeatability_freedom };
    Estimate::with(measured.repeatability, doubt).into()
}

/// The strength with what is known of its reading, its instrument and its factor.
fn strength_of(
    instrument: &Instrument,
    setting: &Setting<'_>,
    measured: &MeasuredBrew,
) -> Result<Budget<Strength>, Error> {
    uncertainty::strength(&ReadStrength {
        reading: uncertainty::of_readings(&measured.readings, &own_scatter(measured))?,
        instrument: uncertainty::of_limit(instrument.limit, Shape::Rectangular),
        factor: Standard::known(instrument.factor),
        zero: measured.zero,
        water_solids: Estimate::exact(setting.kitchen.water_solids),
    })
}

/// The yield with what is known of its strength and its weighings.
fn yield_of(
    instrument: &Instrument,
    brew: &Brew,
    strength: &Estimate<Strength>,
) -> Result<Budget<Yield>, Error> {
    let scale = uncertainty::of_limit(instrument.scale_limit, Shape::Rectangular);
    uncertainty::extraction_yield(&Measured {
        strength: *strength,
        dose: Estimate::with(brew.dose, scale),
        water: Estimate::with(brew.water, scale),
        beverage: Estimate::with(brew.beverage, scale),
        moisture: Estimate::exact(brew.moisture),
        water_solids: Estimate::exact(brew.water_solids),
        vapour: Estimate::exact(brew.vapour),
        held_strength: Estimate::exact(brew.held_strength),
        span: Standard::NONE,
        // In the strength already.
        factor: Standard::NONE,
    })
}

/// The yield as the control chart counts it.
fn by_chart(
    instrument: &Instrument,
    brew: &Brew,
    strength: &Estimate<Strength>,
) -> Result<Budget<Yield>, Error> {
    let scale = uncertainty::of_limit(instrument.scale_limit, Shape::Rectangular);
    uncertainty::flow_through_yield(
        strength,
        &Estimate::with(brew.beverage, scale),
        &Estimate::with(brew.dose, scale),
        // In the strength already.
        &Standard::NONE,
    )
}

/// What most of the doubt comes from, and what it would be worth to know that twice as well.
fn rests_on<M: Uncertain>(
    out: &mut Text,
    label: &str,
    budget: &Budget<M>,
    sure: Confidence,
) -> Result<(), Error> {
    let Some(most) = budget.dominant() else { return Ok(()) };
    let now = budget.estimate.expanded(sure)?;
    item(
        out,
        label,
        format_args!(
            "{}: {:.0} of the doubt is the {}; known twice as well, ± {:.2} for ± {:.2}",
            M::QUANTITY.name(),
            most.share,
            source(most.term.source),
            now.factor.ratio() * most.halved.value(),
            now.half_width.value(),
        ),
    );
    Ok(())
}

/// What a term is of, as a practitioner says it.
fn source(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::FactorUncertainty => "refractive factor",
        Quantity::StrengthUncertainty => "instrument",
        Quantity::Strength => "strength read",
        other => other.name(),
    }
}

/// Inside, outside or not yet; and whether more readings would tell.
fn decided<M: Uncertain>(
    out: &mut Text,
    label: &str,
    estimate: &Estimate<M>,
    band: &Band<M>,
    sure: Confidence,
    repeats: Option<(Series<StrengthUncertainty>, &MeasuredBrew)>,
) -> Result<(), Error> {
    let chances = decision::chances(estimate, band);
    let said = match decision::decide(estimate, band, sure) {
        Decision::Inside => "inside".to_string(),
        Decision::Below => "below".to_string(),
        Decision::Above => "above".to_string(),
        _ => format!(
            "not yet decided: inside with {:.0}, below {:.0}, above {:.0}",
            chances.inside, chances.below, chances.above,
        ),
    };
    let mut words = format!("{} {said}", M::QUANTITY.name());
    if let (true, Some((scatter, measured))) = (said.starts_with("not"), repeats) {
        words += &more_readings(estimate, band, sure, &scatter, measured)?;
    }
    item(out, label, format_args!("{words}"));
    Ok(())
}

/// Whether more readings would decide a strength.
fn more_readings<M: Uncertain>(
    estimate: &Estimate<M>,
    band: &Band<M>,
    sure: Confidence,
    scatter: &Series<StrengthUncertainty>,
    measured: &MeasuredBrew,
) -> Result<String, Error> {
    if reading::combine(&measured.readings, measured.repeatability)?.agreement != Agreement::Mean {
        return Ok("; the readings do not agree, look for a reason".to_string());
    }
    // What repeating does not lessen: all but the scatter.
    let of_mean = scatter.s.percent() / (measured.readings.len() as f64).sqrt();
    let rest = (estimate.u.value().powi(2) - of_mean.powi(2)).max(0.0).sqrt();
    let needed = decision::readings_needed(
        estimate.value,
        &Standard { u: Measure::new(scatter.s.percent())?, freedom: scatter.freedom },
        &Standard { u: Measure::new(rest)?, freedom: estimate.freedom },
        band,
        sure,
    )?;
    Ok(match needed {
        Needed::Readings(n) => format!("; {n} readings like these would decide"),
        Needed::MoreThanTen => "; it takes more than ten readings".to_string(),
        _ => "; no number of readings would decide it".to_string(),
    })
}

/// What to do about this cup and the next, the surest first.
fn suggestions(
    out: &mut Text,
    instrument: &Instrument,
    setting: &Setting<'_>,
    brew: &Brew,
    strength: &Estimate<Strength>,
    extracted: &Estimate<Yield>,
) -> Result<(), Error> {
    let drink = &setting.drink;
    let Some(window) = drink.window else { return Ok(()) };
    let cup = Cup {
        brew: *brew,
        weighing: uncertainty::of_limit(instrument.scale_limit, Shape::Rectangular),
        strength: *strength,
        extracted: *extracted,
        contact: drink.contact,
    };
    let means = Means {
        rates: None,
        kept: None,
        chamber: setting.brewer.chamber,
        water: drink.brew_temperature,
        milk: false,
    };
    let sure = Confidence::from_percent(SURE)?;
    let advice = advise::on(&cup, &instrument.straying, &means, drink.strength, &window, sure)?;
    let mut label = "could do";
    for suggestion in advice.suggestions() {
        item(out, label, format_args!("{}", said(suggestion, is_yield_judged(&window))));
        label = "";
    }
    let grind = match advice.grind {
        Direction::More => "grind finer: the yield is below its band",
        Direction::Less => "grind coarser: the yield is above its band",
        Direction::NotYetDecided => "leave the grind until the yield is decided",
        Direction::CountingNotStated => {
            "of the grind nothing: the window does not say how it counts its yield"
        }
        _ => return Ok(()),
    };
    item(out, label, format_args!("{grind}"));
    Ok(())
}

fn said(s: &Suggestion, is_yield_judged: bool) -> String {
    let what = match s.change {
        Change::DrinkAsItIs => "this cup as it is".to_string(),
        Change::AddWater => format!("to this cup {:.1} g of water", s.amount),
        Change::AddMilk => format!("to this cup {:.1} g of milk", s.amount),
        Change::SameAgain => "next time the same again".to_string(),
        Change::Dose => format!("next time {:.1} g of coffee for {:.1} g", s.amount, s.before),
        Change::Water => format!("next time {:.1} g of water for {:.1} g", s.amount, s.before),
        Change::TimeWithDose => format!(
            "next time {:.1} g of coffee, {} for {}",
            s.with_dose,
            of_seconds(s.amount),
            of_seconds(s.before),
        ),
        _ => format!("next time {} for {}", of_seconds(s.amount), of_seconds(s.before)),
    };
    let outlook = &s.outlook;
    let cup = format!("{} of {:.0}", outlook.strength.value, outlook.beverage.value);
    let inside = if is_yield_judged {
        format!("yield {:.1}, both inside with {:.0}", outlook.counted.value, outlook.inside)
    } else {
        format!("strength inside with {:.0}", outlook.inside)
    };
    // A number and its unit stay on one line.
    format!("{what}: {cup}, {inside}").replace(" %", "\u{a0}%")
}

fn of_seconds(seconds: f64) -> String {
    Time::from_seconds(seconds).map_or_else(|_| format!("{seconds} s"), clock)
}
