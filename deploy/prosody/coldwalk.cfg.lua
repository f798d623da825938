-- What Prosody 0.12 needs to have Coldwalk in its rooms. Copy to /etc/prosody/conf.d/coldwalk.cfg.lua, put your own domain in the place of
-- chat.example (which is the VirtualHost your people have their accounts on) and your own secret in the place of CHANGE-COLDWALK-SECRET,
-- then restart Prosody. Both domains are names inside this server alone: they need no DNS entry as long as nobody comes from elsewhere.

-- The rooms. If you have such a component already, put the lines below its first into it.
Component "rooms.chat.example" "muc"
    name = "Rooms"
    restrict_room_creation = "local"
    -- Who is who: a person in a room is known by their account, never by a nick. A room that exists already is set in its own settings.
    muc_room_default_public_jids = true
    -- A room outlives the people who leave it, and a restart.
    muc_room_default_persistent = true
    -- What was said while Coldwalk was away is kept on the disk, and it gets this many messages of it when it comes back.
    modules_enabled = { "muc_mam" }
    muc_log_by_default = true
    muc_log_expires_after = "1w"
    muc_room_default_history_length = 500

-- Coldwalk itself. It connects to port 5347 of this machine; the stream is not encrypted, so leave that port on loopback (it is, unless
-- component_interfaces says otherwise).
Component "coldwalk.chat.example"
    component_secret = "CHANGE-COLDWALK-SECRET"
