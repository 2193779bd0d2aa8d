//! Where a cup stands: inside a window or not, and how far from each edge.

use cupwright::verdict::{self, Band, Counting, Place, Standing, Window};

use crate::call::{Call, Refused, answer, checked, field, given};
use crate::status::cupwright_error;

/// A wanted range of strength, and of yield where there is one. Published windows are in the macros
/// CUPWRIGHT_GOLDEN_CUP_2015 and CUPWRIGHT_HOME_BREWER_2018; a window is somebody's taste put in
/// numbers.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_window {
    /// Lowest strength inside, {Strength}.
    pub strength_lowest_pct: f64,
    /// Highest, {Strength}.
    pub strength_highest_pct: f64,
    /// Lowest yield inside, {Yield}; not looked at without one.
    pub yield_lowest_pct: f64,
    /// Highest, {Yield}; not looked at without one.
    pub yield_highest_pct: f64,
    /// Whether the window has a yield: 0 for no, anything else for yes.
    pub has_yield: i32,
    /// How it counts that yield: one of enum cupwright_counting; not looked at without one.
    pub yield_counting: i32,
}

/// How a window counts the yield of a cup. Two counts of one cup differ by up to three points.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_counting {
    /// Its source does not say: then no forecast and no advice judges the yield.
    NotStated = 1,
    /// As the brewing control chart does: cupwright_extraction_flow_through_yield().
    FlowThrough = 2,
    /// By the whole balance at the brewer's own held strength: cupwright_extraction_yield().
    MassBalance = 3,
}

/// On which side of a band a value lies. The edges are inside.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_side {
    /// Below the lowest edge.
    Below = 1,
    /// Inside, edges included.
    Inside = 2,
    /// Above the highest edge.
    Above = 3,
}

/// Where a value stands in its band; distances in the value's unit, negative outside.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_place {
    /// Distance above the lowest edge.
    pub above_lowest: f64,
    /// Distance below the highest edge.
    pub below_highest: f64,
    /// Distance above the centre.
    pub above_centre: f64,
    /// Below, inside or above: one of enum cupwright_side.
    pub side: i32,
}

/// Where a cup stands in a window.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_standing {
    /// Its strength.
    pub strength: cupwright_place,
    /// Its yield; all zero where the window has none.
    pub r#yield: cupwright_place,
    /// Whether the window has a yield: 1 or 0.
    pub has_yield: i32,
    /// Whether strength, and yield where there is one, are both inside: 1 or 0.
    pub is_inside: i32,
}

/// The core's window.
pub(crate) fn window(call: Call, window: &cupwright_window) -> Result<Window, Refused> {
    let strength = call.core(Band::new(
        checked!(call, window.strength_lowest_pct)?,
        checked!(call, window.strength_highest_pct)?,
    ))?;
    let extracted = match window.has_yield {
        0 => None,
        _ => Some(call.core(Band::new(
            checked!(call, window.yield_lowest_pct)?,
            checked!(call, window.yield_highest_pct)?,
        ))?),
    };
    let counting = match window.has_yield {
        0 => Counting::NotStated,
        _ => counting_of(call, window.yield_counting)?,
    };
    Ok(Window { strength, extracted, counting })
}

fn counting_of(call: Call, code: i32) -> Result<Counting, Refused> {
    const NOT_STATED: i32 = cupwright_counting::NotStated as i32;
    const FLOW_THROUGH: i32 = cupwright_counting::FlowThrough as i32;
    const MASS_BALANCE: i32 = cupwright_counting::MassBalance as i32;
    match code {
        NOT_STATED => Ok(Counting::NotStated),
        FLOW_THROUGH => Ok(Counting::FlowThrough),
        MASS_BALANCE => Ok(Counting::MassBalance),
        _ => Err(call.unknown_choice(code, field!(yield_counting))),
    }
}

fn place(place: Place) -> cupwright_place {
    cupwright_place {
        above_lowest: place.above_lowest,
        below_highest: place.below_highest,
        above_centre: place.above_centre,
        side: place.side as i32,
    }
}

/// No place, where there is nothing to stand in.
const NOWHERE: cupwright_place =
    cupwright_place { above_lowest: 0.0, below_highest: 0.0, above_centre: 0.0, side: 0 };

/// No standing, where there is no window.
pub(crate) const NO_STANDING: cupwright_standing =
    cupwright_standing { strength: NOWHERE, r#yield: NOWHERE, has_yield: 0, is_inside: 0 };

/// What C is told of a standing.
pub(crate) fn standing(standing: Standing) -> cupwright_standing {
    cupwright_standing {
        strength: place(standing.strength),
        r#yield: standing.extracted.map_or(NOWHERE, place),
        has_yield: standing.extracted.is_some().into(),
        is_inside: standing.is_inside().into(),
    }
}

/// Where a cup stands in a window, without regard to how sure its numbers are. The yield must be
/// counted as the window counts it.
///
/// @param window The window.
/// @param strength_pct Strength, {Strength}.
/// @param yield_pct Extraction yield, {Yield}; must be in its range even where the window has none.
/// @param[out] standing Where it stands.
///
/// Fails with CUPWRIGHT_STATUS_EMPTY_BAND where a lowest edge is not below its highest.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_verdict_stand(
    window: *const cupwright_window,
    strength_pct: f64,
    yield_pct: f64,
    standing: *mut cupwright_standing,
    error: *mut cupwright_error,
) -> i32 {
    answer!(standing, error, |call| Ok({
        let window = self::window(call, given!(call, window)?)?;
        let standing =
            verdict::stand(&window, checked!(call, strength_pct)?, checked!(call, yield_pct)?);
        self::standing(standing)
    }))
}
