//! The drive that both benches put pipes into.

/// Length of the drive, m.
pub(crate) const LENGTH: f64 = 60.0;
/// Its rise.
pub(crate) const SLOPE: f64 = 0.004;
/// Low, likely and high unit friction of its ground, Pa.
pub(crate) const FRICTION: [f64; 3] = [2e3, 5e3, 9e3];
/// Its blow count.
pub(crate) const BLOWS: f64 = 12.0;
pub(crate) const CLAY: &str = "  - { material: clay, size: 10 in }\n";

/// A drive of so many stretches with friction of its own, and these pipes.
pub(crate) fn file(stretches: usize, pipes: &str) -> String {
    let stretch = |place: usize| {
        let to = LENGTH * place as f64 / stretches as f64;
        let [low, likely, high] = FRICTION;
        format!(
            "  - {{ to: {to} m, class: medium_to_dense_sand, spt_n: {BLOWS}, largest_stone: 0 mm, \
             unit_friction: {{ low: {low} Pa, likely: {likely} Pa, high: {high} Pa }} }}\n"
        )
    };
    let ground: String = (1..=stretches).map(stretch).collect();
    format!(
        "service: gravity_sewer\nlength: {LENGTH} m\nlaunch: {{ invert_depth: 4.2 m }}\ngrade: {SLOPE}\n\
         groundwater: none\nlubrication: none\nrig: {{ thrust: 900 kN, pull: 500 kN }}\n\
         work: {{ round_the_clock: true }}\nstem: {{ outside_diameter: 100 mm }}\n\
         pull: {{ duration: 6 h, pipe_temperature: 25 degC }}\nground:\n{ground}candidates:\n{pipes}"
    )
}
