//! A scale as cupwright watches it, and a brew as it follows it.

use cupwright::live::{self, Cue, Happening, Setup, Step};
use cupwright::quantity::{
    BrewWater, Capacity, Clock, Division, MassUncertainty, ScaleReading, Time,
};

use crate::follower::{Event, Follower, Plate, Seen};
use crate::line::Sample;

/// What a firmware keeps.
struct Watched {
    follower: live::Follower,
    /// One step for each aim.
    recipe: Vec<Step>,
    poured_g: f64,
    is_cued: bool,
}

/// A watched scale.
pub fn watched(plate: Plate) -> Box<dyn Follower> {
    let setup = Setup {
        division: Division::from_grams(plate.step_g).expect("a display's step"),
        capacity: Capacity::from_grams(plate.most_g).expect("a scale's capacity"),
        ..Setup::COMMON
    };
    let follower = live::Follower::new(setup);
    Box::new(Watched { follower, recipe: Vec::new(), poured_g: 0.0, is_cued: false })
}

/// How a happening is scored, if it is.
fn event(happening: Happening) -> Option<Event> {
    match happening {
        Happening::PourStarted => Some(Event::PourStart),
        Happening::PourStopped => Some(Event::PourStop),
        Happening::Tared => Some(Event::Tare),
        Happening::Lifted => Some(Event::Removed),
        Happening::Returned => Some(Event::Returned),
        Happening::Placed => Some(Event::Placed),
        _ => None,
    }
}

impl Follower for Watched {
    fn take(&mut self, sample: Sample) -> Seen {
        let read = || {
            let clock = Clock::from_seconds(sample.time_s)?;
            Ok::<_, cupwright::Error>((clock, ScaleReading::from_grams(sample.mass_g)?))
        };
        // A sample that is no weight is refused, and nothing is said.
        let Ok((clock, reading)) = read() else { return Seen::default() };
        let Ok(now) = self.follower.take(&self.recipe, clock, reading) else {
            return Seen::default();
        };
        self.poured_g = now.seen.poured.grams();
        let mut events: Vec<Event> =
            now.seen.event.and_then(|happened| event(happened.happening)).into_iter().collect();
        let is_cued = now.cue == Cue::StopPouring;
        if is_cued && !self.is_cued {
            events.push(Event::Cue);
        }
        self.is_cued = is_cued;
        Seen {
            water_g: Some(self.poured_g),
            u_water_g: self.follower.scale().poured_uncertainty().ok().map(MassUncertainty::grams),
            flow_g_s: now.seen.flow.map(|flow| flow.grams_per_second()),
            events,
        }
    }

    fn aim(&mut self, grams: f64) {
        let to = BrewWater::from_grams(self.poured_g + grams).expect("water to aim at");
        // Whatever became of the last aim, this one counts.
        self.follower.go_to(self.recipe.len() as u16);
        self.recipe.push(Step::Pour { to, from: Time::from_seconds(0.0).expect("now") });
    }
}
