//! A scale that is watched while someone brews on it, and a brew that is followed: states that the
//! caller keeps.

use cupwright::live::{Account, Follower, Now, Scale, Seen, Setup, Step};
use cupwright::live::{FOLLOWER_BYTES, SCALE_BYTES};
use cupwright::quantity::{Beverage, Change, Dose, Flow, StepCount};
use cupwright::quantity::{FlowVariation, Time, WaterRatio};

use crate::call::{Call, Field, Refused, answer, checked, done, field, given, opened};
use crate::forecast::{self, cupwright_intended, cupwright_outlook};
use crate::status::cupwright_error;
use crate::verdict::{self, cupwright_window};

/// Length of a scale's state as bytes.
pub const CUPWRIGHT_SCALE_BYTES: usize = 624;

/// Length of a follower's state as bytes.
pub const CUPWRIGHT_FOLLOWER_BYTES: usize = 784;

const _: () = assert!(CUPWRIGHT_SCALE_BYTES == SCALE_BYTES);
const _: () = assert!(CUPWRIGHT_FOLLOWER_BYTES == FOLLOWER_BYTES);

/// A scale that is being watched. The caller keeps it, anywhere, one for each scale; it may be copied
/// and the copy goes on as the scale itself. cupwright_live_begin() begins it. What is in it concerns
/// nobody else, and holds for this version of the library on this kind of processor:
/// cupwright_live_to_bytes() makes something to keep of it.
#[repr(C)]
pub struct cupwright_scale {
    /// Not to be read or written.
    pub state: [u64; 64],
}

/// A brew that is being followed, with its scale. Kept as a cupwright_scale is; cupwright_follow_begin()
/// begins it.
#[repr(C)]
pub struct cupwright_follower {
    /// Not to be read or written.
    pub state: [u64; 96],
}

/// A scale, and how it is used. A common kitchen scale under a kettle with a spout: 0.1 g, 2000 g, 15
/// g/s (estimate).
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_live_setup {
    /// Smallest step of its readings, {Division}.
    pub division_g: f64,
    /// Most that it can show from its zero at the beginning, {Capacity}.
    pub capacity_g: f64,
    /// Fastest that water is poured on it, {FastestPour}.
    pub fastest_g_per_s: f64,
}

/// What is going on.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_doing {
    /// Nothing but drift.
    Still = 1,
    /// Water is poured.
    Pouring = 2,
    /// A pour has just ended.
    Settling = 3,
    /// Water comes too slowly to be a pour.
    Dripping = 4,
    /// Something is moved, stirred or knocked.
    Disturbed = 5,
    /// A hand presses.
    Pressed = 6,
    /// More lies on the scale than it can weigh.
    Overloaded = 7,
}

/// What can happen, and what its event_change_g is.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_happening {
    /// A pour began: what it has brought so far.
    PourStarted = 1,
    /// A pour ended: what it brought.
    PourStopped = 2,
    /// The water of a pour has come to rest: what that pour brought in the end.
    Settled = 3,
    /// Water began to come slowly: what it has brought so far.
    DripStarted = 4,
    /// It no longer does: what it brought.
    DripStopped = 5,
    /// The display was set to zero: the change of the reading.
    Tared = 6,
    /// Something was put down: its weight.
    Placed = 7,
    /// Something was taken off: the change, below zero.
    Lifted = 8,
    /// It was put back: what it is heavier than before.
    Returned = 9,
    /// The reading changed, and that may have been water or not: the change.
    Unclear = 10,
    /// Something moved, was stirred or knocked: how far the reading is off. A pour that was told and has not come to
    /// rest was none if the reading has fallen back to where it began: it brought nothing, as poured_g says.
    Disturbed = 11,
    /// A hand presses: how much. What was put down since is the hand, and a pour that goes on none.
    Pressed = 12,
    /// The hand let go: what is left of the press.
    Released = 13,
    /// More than the scale can weigh: the reading.
    Overloaded = 14,
    /// No readings came for a while: what has changed meanwhile.
    Lost = 15,
    /// The reading has drifted: how far since this was last told.
    Drifted = 16,
    /// The reading has been restless for a minute, a fault or a scale that is carried: how far it is
    /// off.
    Restless = 17,
}

/// What a scale saw, after a reading.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_live_seen {
    /// The reading without its noise; what it was before while something disturbs it.
    pub level_g: f64,
    /// How fast it rises; 0 where unknown: while something disturbs it, and for the next three points.
    pub flow_g_per_s: f64,
    /// Water poured since cupwright_live_count_anew(), whatever was lifted or set to zero meanwhile.
    pub poured_g: f64,
    /// What is not in that and may be water, or is in it and may not be.
    pub unclear_g: f64,
    /// When something happened, as well as can be told afterwards; 0 where nothing did.
    pub event_clock_s: f64,
    /// By how much, as enum cupwright_happening says; 0 where nothing did.
    pub event_change_g: f64,
    /// Whether there is a flow: 1 or 0.
    pub has_flow: i32,
    /// What is going on: one of enum cupwright_doing.
    pub doing: i32,
    /// What has happened: one of enum cupwright_happening; 0 for nothing. Things that happened at once
    /// come with one reading after the other.
    pub event: i32,
}

/// Where all that a reading has changed by is put down.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_live_accounts {
    /// Water.
    pub poured_g: f64,
    /// Things put down, less things taken off.
    pub moved_g: f64,
    /// Set to zero.
    pub tared_g: f64,
    /// Drift: creep, warming, evaporation, drips slower than 0.2 g/s.
    pub drifted_g: f64,
    /// What could be water or not.
    pub unclear_g: f64,
    /// What the activity going on has gained.
    pub under_way_g: f64,
    /// Standard uncertainty of the water poured, by what the scale saw alone: ends of its runs at rest,
    /// drift meanwhile, what is unclear.
    pub u_poured_g: f64,
}

/// A step of a recipe as a scale can follow it.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_step {
    /// Rinse the paper; the water is thrown away. Over when the vessel is lifted.
    Rinse = 1,
    /// Weigh the coffee: dose_g.
    Dose = 2,
    /// Pour until there is so much water in all: to_g, not before from_s.
    Pour = 3,
    /// Stir, or swirl: not before from_s.
    Stir = 4,
    /// Wait: until_s.
    Wait = 5,
    /// Press by hand, or let it drain.
    Press = 6,
    /// Weigh what has come out: vessel_g. Put down, or left where it stands when the brewer is lifted off
    /// it, of which the weight tells where the scale began empty.
    Beverage = 7,
}

/// A step with its numbers. Times count from the first water.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_live_step {
    /// Coffee to weigh, {Dose}; looked at for CUPWRIGHT_STEP_DOSE.
    pub dose_g: f64,
    /// Water in all when the step is over, {BrewWater}; looked at for CUPWRIGHT_STEP_POUR.
    pub to_g: f64,
    /// Not before this time, {Time}; looked at for CUPWRIGHT_STEP_POUR and CUPWRIGHT_STEP_STIR.
    pub from_s: f64,
    /// Until this time, {Time}; looked at for CUPWRIGHT_STEP_WAIT.
    pub until_s: f64,
    /// The vessel that the beverage is weighed in, {VesselMass}; 0 where the display was set to zero
    /// with it; looked at for CUPWRIGHT_STEP_BEVERAGE.
    pub vessel_g: f64,
    /// What to do: one of enum cupwright_step.
    pub step: i32,
}

/// What to do now.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_cue {
    /// Nothing: there is no recipe, or it is done.
    Nothing = 0,
    /// Rinse the paper and throw the water away.
    Rinse = 1,
    /// Add coffee.
    AddCoffee = 2,
    /// Pour.
    Pour = 3,
    /// Stop pouring.
    StopPouring = 4,
    /// Stir.
    Stir = 5,
    /// Wait.
    Wait = 6,
    /// Press.
    Press = 7,
    /// Weigh what has come out.
    WeighBeverage = 8,
}

/// Why a cue is given.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_why {
    /// It is next in the recipe.
    Next = 1,
    /// Its time has come.
    Time = 2,
    /// It is too early for what comes next.
    Early = 3,
    /// What flows and falls until the hand has stopped makes up the rest.
    Lead = 4,
    /// There is enough.
    Enough = 5,
    /// There is more than wanted.
    TooMuch = 6,
    /// Some is still missing.
    Missing = 7,
    /// The scale cannot say how much water there is: unclear_g.
    Unclear = 8,
    /// Nothing is left to do.
    Done = 9,
}

/// A brew as it stands. What is not there is 0.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_live_now {
    /// What the scale saw. It knows no steps: coffee that is weighed in is a pour to it, until the
    /// follower counts it as dose. The brew's own clock is the time since the first water.
    pub seen: cupwright_live_seen,
    /// Water still to pour in this step; below zero for too much.
    pub to_pour_g: f64,
    /// Time still to wait in this step.
    pub to_wait_s: f64,
    /// Water over dose, once both are known.
    pub ratio_g_per_g: f64,
    /// Time since the first water.
    pub brewing_s: f64,
    /// How much the flow of this pour, or of the last one, wanders: its standard deviation over its
    /// mean.
    pub flow_variation_pct: f64,
    /// Whether there is water to pour: 1 or 0.
    pub has_to_pour: i32,
    /// Whether there is time to wait: 1 or 0.
    pub has_to_wait: i32,
    /// Whether there is a ratio: 1 or 0.
    pub has_ratio: i32,
    /// Whether there was water: 1 or 0.
    pub has_brewing: i32,
    /// Whether there is a variation: 1 or 0.
    pub has_flow_variation: i32,
    /// Which step of the recipe it is at, counted from 0; as many as there are when it is done.
    pub step: i32,
    /// What to do: one of enum cupwright_cue.
    pub cue: i32,
    /// Why: one of enum cupwright_why.
    pub why: i32,
}

/// What a follower has weighed and learned.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_live_weighed {
    /// Coffee, weighed or told.
    pub dose_g: f64,
    /// What has come out, weighed or told.
    pub beverage_g: f64,
    /// What dripped off while the vessel was lifted.
    pub drips_g: f64,
    /// How long before the water is reached the cue to stop comes: every stop that follows a cue
    /// teaches it. Keep it for the same hand and kettle: cupwright_follow_set_lead().
    pub lead_s: f64,
    /// Whether there is a dose: 1 or 0.
    pub has_dose: i32,
    /// Whether there is a beverage: 1 or 0.
    pub has_beverage: i32,
}

/// A value of the core's as it lies in a state of the caller's.
#[repr(C)]
struct Begun<T> {
    /// Tells it from memory where nothing was begun.
    word: u64,
    value: T,
}

/// A value of the core's that lies in a state.
trait Value: Sized {
    /// What stands before it: another for each kind, size and version.
    const WORD: u64;
}

impl Value for Scale {
    const WORD: u64 = word("scale", size_of::<Self>());
}

impl Value for Follower {
    const WORD: u64 = word("follower", size_of::<Self>());
}

/// The hash FNV-1a of a name and the version, from a size on.
const fn word(name: &str, size: usize) -> u64 {
    let mut hash = 0xCBF2_9CE4_8422_2325 ^ size as u64;
    let mut bytes = name.as_bytes();
    let mut version = env!("CARGO_PKG_VERSION").as_bytes();
    while let Some((byte, rest)) = bytes.split_first() {
        hash = (hash ^ *byte as u64).wrapping_mul(0x0100_0000_01B3);
        bytes = rest;
        if bytes.is_empty() {
            (bytes, version) = (version, bytes);
        }
    }
    hash
}

const _: () = {
    assert!(size_of::<Begun<Scale>>() <= size_of::<cupwright_scale>());
    assert!(align_of::<Begun<Scale>>() == align_of::<cupwright_scale>());
    assert!(size_of::<Begun<Follower>>() <= size_of::<cupwright_follower>());
    assert!(align_of::<Begun<Follower>>() == align_of::<cupwright_follower>());
};

impl<T: Value> Begun<T> {
    const fn new(value: T) -> Self {
        Self { word: T::WORD, value }
    }

    /// Refuses a state that was not begun.
    ///
    /// # Safety
    /// NULL, or valid for reading a word.
    unsafe fn check(call: Call, state: *const Self, field: Field) -> Result<(), Refused> {
        if state.is_null() {
            return Err(call.null(field));
        }
        // SAFETY: not NULL, so valid for reading. Nothing but the word is read.
        let word = unsafe { (&raw const (*state).word).read() };
        if word == T::WORD { Ok(()) } else { Err(call.not_begun(field)) }
    }

    /// The value of a state, to look at.
    ///
    /// # Safety
    /// NULL, or valid for reading while it is used; where the word is ours, so is what follows it.
    unsafe fn of<'a>(call: Call, state: *const Self, field: Field) -> Result<&'a T, Refused> {
        // SAFETY: the same.
        unsafe { Self::check(call, state, field) }?;
        // SAFETY: the word is written together with a value, and never without one.
        Ok(unsafe { &(*state).value })
    }

    /// The value of a state, to change.
    ///
    /// # Safety
    /// The same, and valid for writing.
    unsafe fn of_mut<'a>(call: Call, state: *mut Self, field: Field) -> Result<&'a mut T, Refused> {
        // SAFETY: the same.
        unsafe { Self::check(call, state, field) }?;
        // SAFETY: the word is written together with a value, and never without one.
        Ok(unsafe { &mut (*state).value })
    }
}

/// The value in a state, to look at or to change; or a refusal that names it.
macro_rules! begun {
    ($call:ident, $state:ident: $value:ty) => {
        // SAFETY: the crate's own conditions, for pointers and for states.
        unsafe { Begun::<$value>::of($call, $state.cast(), field!($state)) }
    };
    ($call:ident, mut $state:ident: $value:ty) => {
        // SAFETY: the crate's own conditions, for pointers and for states.
        unsafe { Begun::<$value>::of_mut($call, $state.cast(), field!($state)) }
    };
}

fn setup_of(call: Call, setup: &cupwright_live_setup) -> Result<Setup, Refused> {
    Ok(Setup {
        division: checked!(call, setup.division_g)?,
        capacity: checked!(call, setup.capacity_g)?,
        fastest: checked!(call, setup.fastest_g_per_s)?,
    })
}

/// The core's step.
fn step_of(call: Call, step: &cupwright_live_step) -> Result<Step, Refused> {
    use cupwright_step as kind;
    Ok(match step.step {
        of if of == kind::Rinse as i32 => Step::Rinse,
        of if of == kind::Dose as i32 => Step::Dose { dose: checked!(call, step.dose_g)? },
        of if of == kind::Pour as i32 => {
            Step::Pour { to: checked!(call, step.to_g)?, from: checked!(call, step.from_s)? }
        }
        of if of == kind::Stir as i32 => Step::Stir { from: checked!(call, step.from_s)? },
        of if of == kind::Wait as i32 => Step::Wait { until: checked!(call, step.until_s)? },
        of if of == kind::Press as i32 => Step::Press,
        of if of == kind::Beverage as i32 => {
            Step::Beverage { vessel: checked!(call, step.vessel_g)? }
        }
        _ => return Err(call.unknown_choice(step.step, field!(step))),
    })
}

fn seen(of: &Seen) -> cupwright_live_seen {
    cupwright_live_seen {
        level_g: of.level.grams(),
        flow_g_per_s: of.flow.map_or(0.0, Flow::grams_per_second),
        poured_g: of.poured.grams(),
        unclear_g: of.unclear.grams(),
        event_clock_s: of.event.map_or(0.0, |event| event.clock.seconds()),
        event_change_g: of.event.map_or(0.0, |event| event.change.grams()),
        has_flow: of.flow.is_some().into(),
        doing: of.doing as i32,
        event: of.event.map_or(0, |event| event.happening as i32),
    }
}

fn account(call: Call, of: &Scale) -> Result<cupwright_live_accounts, Refused> {
    let Account { poured, moved, tared, drifted, unclear, under_way } = call.core(of.account())?;
    Ok(cupwright_live_accounts {
        poured_g: poured.grams(),
        moved_g: moved.grams(),
        tared_g: tared.grams(),
        drifted_g: drifted.grams(),
        unclear_g: unclear.grams(),
        under_way_g: under_way.grams(),
        u_poured_g: call.core(of.poured_uncertainty())?.grams(),
    })
}

fn now(of: &Now) -> cupwright_live_now {
    cupwright_live_now {
        seen: seen(&of.seen),
        to_pour_g: of.to_pour.map_or(0.0, Change::grams),
        to_wait_s: of.to_wait.map_or(0.0, Time::seconds),
        ratio_g_per_g: of.ratio.map_or(0.0, WaterRatio::grams_per_gram),
        brewing_s: of.brewing.map_or(0.0, Time::seconds),
        flow_variation_pct: of.variation.map_or(0.0, FlowVariation::percent),
        has_to_pour: of.to_pour.is_some().into(),
        has_to_wait: of.to_wait.is_some().into(),
        has_ratio: of.ratio.is_some().into(),
        has_brewing: of.brewing.is_some().into(),
        has_flow_variation: of.variation.is_some().into(),
        step: of.step.into(),
        cue: of.cue as i32,
        why: of.why as i32,
    }
}

fn weighed(call: Call, of: &Follower) -> Result<cupwright_live_weighed, Refused> {
    Ok(cupwright_live_weighed {
        dose_g: of.dose().map_or(0.0, Dose::grams),
        beverage_g: of.beverage().map_or(0.0, Beverage::grams),
        drips_g: call.core(of.drips())?.grams(),
        lead_s: of.lead().seconds(),
        has_dose: of.dose().is_some().into(),
        has_beverage: of.beverage().is_some().into(),
    })
}

/// Begins to watch a scale. The first reading is taken for what lies on it.
///
/// ```text
/// static cupwright_scale scale;
///
/// void on_start(void) {
///     const cupwright_live_setup setup = {0.1, 2000.0, 15.0};
///     cupwright_live_begin(&setup, &scale, NULL);
/// }
///
/// void on_reading(double clock_s, double reading_g) {
///     cupwright_live_seen seen;
///     if (cupwright_live_take(&scale, clock_s, reading_g, &seen, NULL) != CUPWRIGHT_STATUS_OK) {
///         return;
///     }
///     show(seen.poured_g, seen.has_flow ? seen.flow_g_per_s : 0.0);
///     if (seen.event == CUPWRIGHT_HAPPENING_POUR_STARTED) {
///         start_timer(seen.event_clock_s);
///     }
/// }
///
/// void on_tare_button(double reading_g) {
///     cupwright_live_zeroed(&scale, reading_g, NULL);
/// }
/// ```
///
/// @param setup The scale.
/// @param[out] scale The state; whatever it was before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_live_begin(
    setup: *const cupwright_live_setup,
    scale: *mut cupwright_scale,
    error: *mut cupwright_error,
) -> i32 {
    let scale: *mut Begun<Scale> = scale.cast();
    answer!(scale, error, |call| Ok({
        Begun::new(Scale::new(setup_of(call, given!(call, setup)?)?))
    }))
}

/// Takes the next reading: five to a hundred a second, at uneven times and with gaps.
///
/// Readings nearer than 0.1 s are averaged to one point. A line is fitted to the points since the flow
/// last changed; its slope is the flow. A point that no pour can reach is held back until those after
/// it say what it was. Sources: linear regression; the cumulative sum test of Page, Biometrika 41
/// (1954), 100 (from memory).
///
/// @param scale The state.
/// @param clock_s When the reading was taken, on a clock that only goes forward, {Clock}.
/// @param reading_g What the scale reads, {ScaleReading}. NaN is refused, like all that is out of range,
///     and the state stays as it was: a reading that failed is simply left out.
/// @param[out] seen What the scale saw.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun; CUPWRIGHT_STATUS_IMPOSSIBLE
/// for a clock that does not go forward, and the state stays as it was;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE after years of pouring.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_live_take(
    scale: *mut cupwright_scale,
    clock_s: f64,
    reading_g: f64,
    seen: *mut cupwright_live_seen,
    error: *mut cupwright_error,
) -> i32 {
    answer!(seen, error, |call| Ok({
        let scale = begun!(call, mut scale: Scale)?;
        let (clock, reading) = (checked!(call, clock_s)?, checked!(call, reading_g)?);
        self::seen(call.core(scale.take(clock, reading).as_ref())?)
    }))
}

/// Tells that readings are lower by so much from the next one on, because the display was set to zero:
/// the firmware knows, and nothing has to be guessed.
///
/// @param scale The state.
/// @param change_g By how much readings are lower, {Change}: the reading before.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_live_zeroed(
    scale: *mut cupwright_scale,
    change_g: f64,
    error: *mut cupwright_error,
) -> i32 {
    done!(error, |call| {
        let scale = begun!(call, mut scale: Scale)?;
        scale.zeroed(checked!(call, change_g)?);
        Ok(())
    })
}

/// Counts water from here on: what was poured so far, a rinse for example, is weight like any other.
///
/// @param scale The state.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_live_count_anew(
    scale: *mut cupwright_scale,
    error: *mut cupwright_error,
) -> i32 {
    done!(error, |call| {
        let scale = begun!(call, mut scale: Scale)?;
        scale.count_anew();
        Ok(())
    })
}

/// Where all changes of the reading are put down. Their sum is the level.
///
/// @param scale The state; it stays as it is.
/// @param[out] account The accounts.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE after years of pouring.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_live_account(
    scale: *const cupwright_scale,
    account: *mut cupwright_live_accounts,
    error: *mut cupwright_error,
) -> i32 {
    answer!(account, error, |call| Ok({
        let scale = begun!(call, scale: Scale)?;
        self::account(call, scale)?
    }))
}

/// A scale's state as bytes, the same on every processor, for a memory that outlives a restart.
///
/// @param scale The state; it stays as it is.
/// @param[out] bytes Room for CUPWRIGHT_SCALE_BYTES bytes.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_live_to_bytes(
    scale: *const cupwright_scale,
    bytes: *mut u8,
    error: *mut cupwright_error,
) -> i32 {
    let bytes: *mut [u8; CUPWRIGHT_SCALE_BYTES] = bytes.cast();
    answer!(bytes, error, |call| Ok(begun!(call, scale: Scale)?.to_bytes()))
}

/// A scale's state from its bytes. No damaged one is ever read: a single wrong byte is always found.
/// The clock must have gone on meanwhile; the first reading counts as one after a gap.
///
/// @param bytes The bytes.
/// @param count How many: CUPWRIGHT_SCALE_BYTES of this version.
/// @param[out] scale The state; whatever it was before.
///
/// Fails with CUPWRIGHT_STATUS_UNREADABLE, the error's `limit` says why.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_live_from_bytes(
    bytes: *const u8,
    count: usize,
    scale: *mut cupwright_scale,
    error: *mut cupwright_error,
) -> i32 {
    let scale: *mut Begun<Scale> = scale.cast();
    answer!(scale, error, |call| Ok(Begun::new(opened!(call, bytes, count, Scale::from_bytes)?)))
}

/// Begins to follow a brew, at the first step of its recipe and with nothing known.
///
/// ```text
/// static const cupwright_live_step recipe[] = {
///     {.step = CUPWRIGHT_STEP_DOSE, .dose_g = 15.0},
///     {.step = CUPWRIGHT_STEP_POUR, .to_g = 45.0},
///     {.step = CUPWRIGHT_STEP_POUR, .to_g = 250.0, .from_s = 40.0},
/// };
///
/// cupwright_live_now now;
/// if (cupwright_follow_take(&follower, recipe, 3, clock_s, reading_g, &now, NULL) == CUPWRIGHT_STATUS_OK) {
///     show_words(cupwright_cue_text(now.cue), cupwright_why_text(now.why));
/// }
/// ```
///
/// @param setup The scale.
/// @param[out] follower The state; whatever it was before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_begin(
    setup: *const cupwright_live_setup,
    follower: *mut cupwright_follower,
    error: *mut cupwright_error,
) -> i32 {
    let follower: *mut Begun<Follower> = follower.cast();
    answer!(follower, error, |call| Ok({
        Begun::new(Follower::new(setup_of(call, given!(call, setup)?)?))
    }))
}

/// Takes the next reading, as cupwright_live_take() does, and tells what to do.
///
/// @param follower The state.
/// @param recipe The steps, the same at every call; NULL where there are none.
/// @param count How many, {StepCount}.
/// @param clock_s When the reading was taken, on a clock that only goes forward, {Clock}.
/// @param reading_g What the scale reads, {ScaleReading}. NaN is refused, like all that is out of range,
///     and the state stays as it was.
/// @param[out] now The brew as it stands.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
/// CUPWRIGHT_STATUS_UNKNOWN_CHOICE for a step that is none; CUPWRIGHT_STATUS_IMPOSSIBLE for a clock that
/// does not go forward; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE after years of pouring.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_take(
    follower: *mut cupwright_follower,
    recipe: *const cupwright_live_step,
    count: usize,
    clock_s: f64,
    reading_g: f64,
    now: *mut cupwright_live_now,
    error: *mut cupwright_error,
) -> i32 {
    answer!(now, error, |call| Ok({
        let follower = begun!(call, mut follower: Follower)?;
        let recipe = given!(call, recipe, count: StepCount)?;
        recipe.iter().try_for_each(|step| step_of(call, step).map(|_| ()))?;
        let at = |place| recipe.get(place).and_then(|step| step_of(call, step).ok());
        let (clock, reading) = (checked!(call, clock_s)?, checked!(call, reading_g)?);
        self::now(call.core(follower.take_from(at, clock, reading).as_ref())?)
    }))
}

/// Goes on to the next step: a button was pressed.
///
/// @param follower The state.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_go_on(
    follower: *mut cupwright_follower,
    error: *mut cupwright_error,
) -> i32 {
    done!(error, |call| {
        let follower = begun!(call, mut follower: Follower)?;
        follower.go_on();
        Ok(())
    })
}

/// Tells that the display was set to zero, as cupwright_live_zeroed() does.
///
/// @param follower The state.
/// @param change_g By how much readings are lower, {Change}: the reading before.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_zeroed(
    follower: *mut cupwright_follower,
    change_g: f64,
    error: *mut cupwright_error,
) -> i32 {
    done!(error, |call| {
        let follower = begun!(call, mut follower: Follower)?;
        follower.zeroed(checked!(call, change_g)?);
        Ok(())
    })
}

/// Tells the dose, where it was weighed elsewhere. In a step that weighs coffee the scale has the last
/// word: cupwright_follow_go_on() first.
///
/// @param follower The state.
/// @param dose_g The dose, {Dose}.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_set_dose(
    follower: *mut cupwright_follower,
    dose_g: f64,
    error: *mut cupwright_error,
) -> i32 {
    done!(error, |call| {
        let follower = begun!(call, mut follower: Follower)?;
        follower.set_dose(checked!(call, dose_g)?);
        Ok(())
    })
}

/// Tells the beverage, where it was weighed elsewhere.
///
/// @param follower The state.
/// @param beverage_g The beverage, {Beverage}.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_set_beverage(
    follower: *mut cupwright_follower,
    beverage_g: f64,
    error: *mut cupwright_error,
) -> i32 {
    done!(error, |call| {
        let follower = begun!(call, mut follower: Follower)?;
        follower.set_beverage(checked!(call, beverage_g)?);
        Ok(())
    })
}

/// Sets how long before the water is reached the cue to stop comes, for a hand that is known.
///
/// @param follower The state.
/// @param lead_s The lead, {Lead}.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_set_lead(
    follower: *mut cupwright_follower,
    lead_s: f64,
    error: *mut cupwright_error,
) -> i32 {
    done!(error, |call| {
        let follower = begun!(call, mut follower: Follower)?;
        follower.set_lead(checked!(call, lead_s)?);
        Ok(())
    })
}

/// What was weighed and learned so far.
///
/// @param follower The state; it stays as it is.
/// @param[out] weighed Dose, beverage, drips and lead.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for more drips than can be.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_weighed(
    follower: *const cupwright_follower,
    weighed: *mut cupwright_live_weighed,
    error: *mut cupwright_error,
) -> i32 {
    answer!(weighed, error, |call| self::weighed(call, begun!(call, follower: Follower)?))
}

/// The accounts of the follower's scale, as cupwright_live_account() has them.
///
/// @param follower The state; it stays as it is.
/// @param[out] account The accounts.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE after years of pouring.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_account(
    follower: *const cupwright_follower,
    account: *mut cupwright_live_accounts,
    error: *mut cupwright_error,
) -> i32 {
    answer!(account, error, |call| Ok({
        let follower = begun!(call, follower: Follower)?;
        self::account(call, follower.scale())?
    }))
}

/// What the brew will be if nothing more is poured, and the chance that it lies in a window: as
/// cupwright_forecast_outlook() says, with the dose and the water that are there by now.
///
/// @param follower The state; it stays as it is.
/// @param intended The brew as it was meant. Its dose counts until one is weighed, its water never does;
///     how surely the dose is known stays as it was meant, how surely the water is comes from the scale.
/// @param window The window, its yield as charts count it.
/// @param[out] outlook What will come out.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for water that is no brew water yet, and with what
/// cupwright_forecast_outlook() fails with.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_outlook(
    follower: *const cupwright_follower,
    intended: *const cupwright_intended,
    window: *const cupwright_window,
    outlook: *mut cupwright_outlook,
    error: *mut cupwright_error,
) -> i32 {
    answer!(outlook, error, |call| Ok({
        let follower = begun!(call, follower: Follower)?;
        let meant = forecast::intended_of(call, given!(call, intended)?)?;
        let window = verdict::window(call, given!(call, window)?)?;
        let now = call.core(follower.so_far(&meant))?;
        forecast::outlook(&call.core(cupwright::forecast::outlook(&now, &window))?)
    }))
}

/// A follower's state as bytes, as cupwright_live_to_bytes() makes them of a scale's.
///
/// @param follower The state; it stays as it is.
/// @param[out] bytes Room for CUPWRIGHT_FOLLOWER_BYTES bytes.
///
/// Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_to_bytes(
    follower: *const cupwright_follower,
    bytes: *mut u8,
    error: *mut cupwright_error,
) -> i32 {
    let bytes: *mut [u8; CUPWRIGHT_FOLLOWER_BYTES] = bytes.cast();
    answer!(bytes, error, |call| Ok(begun!(call, follower: Follower)?.to_bytes()))
}

/// A follower's state from its bytes, as cupwright_live_from_bytes() reads a scale's. The recipe is not
/// among them.
///
/// @param bytes The bytes.
/// @param count How many: CUPWRIGHT_FOLLOWER_BYTES of this version.
/// @param[out] follower The state; whatever it was before.
///
/// Fails with CUPWRIGHT_STATUS_UNREADABLE, the error's `limit` says why.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_follow_from_bytes(
    bytes: *const u8,
    count: usize,
    follower: *mut cupwright_follower,
    error: *mut cupwright_error,
) -> i32 {
    let follower: *mut Begun<Follower> = follower.cast();
    answer!(follower, error, |call| {
        Ok(Begun::new(opened!(call, bytes, count, Follower::from_bytes)?))
    })
}
